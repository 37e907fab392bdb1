import type { Command, Option } from 'commander';
import { designJsonSchema } from '../../design/jsonSchema.js';
import { SPECIMENS } from '../../design/specimens.js';
import { openSink } from '../output.js';

const SHELLS = ['bash', 'zsh', 'fish'] as const;

type Shell = (typeof SHELLS)[number];

/** A command as a shell has to know it. */
interface Known {
  name: string;
  about: string;
  options: { long: string; short: string | undefined; about: string; takes: boolean; choices: readonly string[] }[];
}

/** What stands behind an option with commas between, and what follows each. */
interface Listed {
  option: string;
  words: readonly string[];
  suffix: string;
}

/**
 * A script that completes commands, options, their values and, after `--vary`, fields, made from the commands
 * themselves.
 */
export async function run(program: Command, shell: Shell): Promise<void> {
  const lists: Listed[] = [
    { option: '--vary', words: varied(designJsonSchema()), suffix: '=' },
    { option: '--with', words: Object.keys(SPECIMENS), suffix: '' },
  ];
  const known = program.commands.map(knownOf);
  const out = openSink('-');
  await out.write(SCRIPTS[shell](program.name(), known, lists));
}

function knownOf(command: Command): Known {
  const shown = command.options.filter(({ hidden }) => !hidden);
  return {
    name: command.name(),
    about: command.description(),
    options: [
      ...shown.map((option: Option) => ({
        long: option.long!,
        short: option.short,
        about: option.description,
        takes: option.required || option.optional,
        choices: option.argChoices ?? [],
      })),
      { long: '--help', short: '-h', about: 'what the command does', takes: false, choices: [] },
    ],
  };
}

interface Node {
  properties?: Record<string, Node>;
  items?: Node;
  anyOf?: Node[];
}

/** What the options of a design may change: paths of the fields of the pit, its fire and its place. */
function varied(schema: unknown): string[] {
  const all = pathsOf(schema as Node, '');
  const other = /^(\$schema|schema|name|shop|job|log|fitted|handles|trailer|loads|options)\b/;
  return ['all.plate', ...new Set(all.filter((path) => !other.test(path)))];
}

function pathsOf(node: Node, path: string): string[] {
  const inner = [
    ...Object.entries(node.properties ?? {}).flatMap(([key, each]) => pathsOf(each, path ? `${path}.${key}` : key)),
    ...(node.items ? pathsOf(node.items, `${path}[0]`) : []),
    ...(node.anyOf ?? []).flatMap((each) => pathsOf(each, path).filter((found) => found !== path)),
  ];
  // a part or a list is not varied as a whole, but a block in a part is
  const whole = path !== '' && !node.items && (!node.properties || path.includes('.'));
  return whole ? [path, ...inner] : inner;
}

/** Cases of a shell's `case`: for each option of each command what may stand behind it. */
function valuesBehind(known: readonly Known[], pattern: (command: string, flag: string) => string) {
  return known.flatMap(({ name, options }) =>
    options.flatMap(({ long, short, choices }) =>
      choices.length === 0
        ? []
        : [{ on: [long, short].flatMap((flag) => (flag ? [pattern(name, flag)] : [])), words: choices.join(' ') }],
    ),
  );
}

const flagsOf = ({ options }: Known) =>
  options.flatMap(({ long, short }) => (short ? [long, short] : [long])).join(' ');

const SCRIPTS: Readonly<Record<Shell, (program: string, known: readonly Known[], lists: readonly Listed[]) => string>> =
  {
    bash: (
      program,
      known,
      lists,
    ) => `# ${program} for bash: source it, or put it into a folder that bash-completion reads
_${program}() {
  local cur="\${COMP_WORDS[COMP_CWORD]}" prev="\${COMP_WORDS[COMP_CWORD-1]}" command="\${COMP_WORDS[1]}"
  COMPREPLY=()
  if [ "$COMP_CWORD" -eq 1 ]; then
    COMPREPLY=($(compgen -W "${known.map(({ name }) => name).join(' ')} --help --version" -- "$cur"))
    return
  fi
  case "$command $prev" in
${lists
  .map(
    ({ option, words, suffix }) => `    *" ${option}")
      local before=""
      case "$cur" in *,*) before="\${cur%,*},"; cur="\${cur##*,}" ;; esac
      compopt -o nospace
      COMPREPLY=($(compgen -P "$before" -S "${suffix}" -W "${words.join(' ')}" -- "$cur"))
      return ;;`,
  )
  .join('\n')}
${valuesBehind(known, (command, flag) => `"${command} ${flag}"`)
  .map(({ on, words }) => `    ${on.join('|')}) COMPREPLY=($(compgen -W "${words}" -- "$cur")); return ;;`)
  .join('\n')}
  esac
  case "$cur" in
    -*)
      case "$command" in
${known.map((each) => `        ${each.name}) COMPREPLY=($(compgen -W "${flagsOf(each)}" -- "$cur")) ;;`).join('\n')}
      esac
      return ;;
  esac
  [ "$command" = completion ] && COMPREPLY=($(compgen -W "${SHELLS.join(' ')}" -- "$cur"))
}
complete -o default -F _${program} ${program}
`,
    zsh: (program, known, lists) => `#compdef ${program}
# ${program} for zsh: put it as _${program} into a folder of $fpath, or source it after compinit
_${program}() {
  local command=$words[2] prev=$words[CURRENT-1]
  if (( CURRENT == 2 )); then
    local -a commands=(
${known.map(({ name, about }) => `      ${quoted(`${name}:${about.replace(/:/g, '\\:')}`)}`).join('\n')}
    )
    _describe command commands
    return
  fi
  case "$command $prev" in
${lists
  .map(
    ({ option, words, suffix }) =>
      `    *" ${option}") compset -P '*,'; compadd -S '${suffix}' -- ${words.map(quoted).join(' ')}; return ;;`,
  )
  .join('\n')}
${valuesBehind(known, (command, flag) => `"${command} ${flag}"`)
  .map(({ on, words }) => `    ${on.join('|')}) compadd -- ${words}; return ;;`)
  .join('\n')}
  esac
  if [[ $words[CURRENT] == -* ]]; then
    case "$command" in
${known.map((each) => `      ${each.name}) compadd -- ${flagsOf(each)} ;;`).join('\n')}
    esac
  elif [[ $command == completion ]]; then
    compadd -- ${SHELLS.join(' ')}
  else
    _files
  fi
}
compdef _${program} ${program}
`,
    fish: (program, known, lists) =>
      [
        `# ${program} for fish: put it into ~/.config/fish/completions/${program}.fish`,
        ...known.map(
          ({ name, about }) => `complete -c ${program} -n __fish_use_subcommand -f -a ${name} -d ${quoted(about)}`,
        ),
        ...known.flatMap(({ name, options }) =>
          options.map(({ long, short, about, takes, choices }) => {
            const list = lists.find(({ option }) => option === long);
            const values = list ? list.words.map((word) => `${word}${list.suffix}`).join(' ') : choices.join(' ');
            return [
              `complete -c ${program} -n '__fish_seen_subcommand_from ${name}' -l ${long.slice(2)}`,
              ...(short ? [`-s ${short.slice(1)}`] : []),
              ...(values ? [`-x -a ${quoted(values)}`] : takes ? ['-r'] : []),
              `-d ${quoted(about)}`,
            ].join(' ');
          }),
        ),
        `complete -c ${program} -n '__fish_seen_subcommand_from completion' -x -a '${SHELLS.join(' ')}'`,
        '',
      ].join('\n'),
  };

/** A word that a shell takes as it is. */
function quoted(text: string): string {
  return `'${text.replace(/'/g, `'\\''`)}'`;
}
