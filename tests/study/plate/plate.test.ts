import { describe, expect, it } from 'vitest';
import { holdPit } from '../../../src/study/events/heldPit.js';
import { studyPlate, type PlateStudy } from '../../../src/study/plate/plateStudy.js';
import { sayIn } from '../../../src/words/quantity.js';
import { flatnessWords, plateNotes } from '../../../src/words/plateWords.js';
import { changed, designOf, OVER, PLAIN } from '../../design/designFiles.js';
import { comparedAsUsual } from '../../support/compared.js';

const studied = new Map<string, PlateStudy>();
/** The study of a pit; what was studied once is at hand. */
function study(text: string): PlateStudy {
  const known = studied.get(text) ?? studyPlate(holdPit(designOf(text))!);
  studied.set(text, known);
  return known;
}
const of = (text: string, plate: string) => text.replaceAll(/plate: [\d/]+ in/g, `plate: ${plate}`);
const BOX = PLAIN.replace(
  'shape: round\n  diameter: 24 in\n  length: 24 in',
  'shape: square\n  width: 24 in\n  height: 24 in\n  length: 24 in',
);
const named = ({ panels }: PlateStudy) => panels.map(({ name }) => name);

describe('flat panels', () => {
  it('are the free ends of a round pit and every wall of a boxed one, but no shell and no end that is joined', () => {
    expect(named(study(PLAIN))).toEqual(['firebox fire end', 'chamber far end']);
    expect(named(study(BOX))).toEqual([
      'firebox roof',
      'firebox floor',
      'firebox side',
      'firebox fire end',
      'chamber far end',
    ]);
    expect(named(study(OVER))).toEqual([
      'firebox floor',
      'firebox side',
      'firebox fire end',
      'firebox far end',
      'upright roof',
      'upright side',
    ]);
  });

  it('take a flat door with them, and none that is rolled', () => {
    const door = 'door: { width: 16 in, height: 14 in, plate: 1/4 in, lap: 1/2 in }';
    const fire = study(changed(['  doorGap: 1.0 in^2', `  doorGap: 1.0 in^2\n  ${door}`]));
    expect(fire.door).toMatchObject({ name: 'firebox door', a_m: 17 * 0.0254, b_m: 15 * 0.0254 });
    expect(fire.door!.corner_m).toBeGreaterThan(0);
    const lid = study(changed(['  doorGap: 2.0 in^2', `  doorGap: 2.0 in^2\n  ${door}`]));
    expect(lid.door).toBeNull();
    expect(named(lid)).not.toContain('chamber door');
  });

  it('are heated more in the middle by a larger fire, and hardly more in thinner plate', () => {
    const at = (text: string) => study(text).worst!.overEdge_K;
    expect(at(changed(['70,000 BTU/h', '120,000 BTU/h']))).toBeGreaterThan(at(PLAIN));
    const [thick, thin] = [at(of(PLAIN, '3/8 in')), at(of(PLAIN, '1/8 in'))];
    expect(thin).toBeGreaterThan(thick);
    expect(thin).toBeLessThan(1.3 * thick);
  });

  it('buckle from a difference that goes with the square of the plate, and give to a push by its cube', () => {
    const [thick, thin] = [study(of(PLAIN, '1/4 in')), study(of(PLAIN, '1/8 in'))];
    expect(thick.worst!.buckles_K.supported / thin.worst!.buckles_K.supported).toBeCloseTo(4, 1);
    expect(thin.softest!.push_m / thick.softest!.push_m).toBeCloseTo(8, 0);
    expect([thick.worst!.flat, thin.worst!.flat]).toEqual(['yes', 'may buckle']);
  });

  it('have a number even where steel glows so that it grows no further', () => {
    const glowing = study(
      changed(['70,000 BTU/h', '400,000 BTU/h'], ['diameter: 4 in, open', 'diameter: 12 in, open'])
        .replace('firebox:', 'firebox:\n  insulation: { material: ceramic fibre, thickness: 3 in, skin: 16 ga }')
        .replace('diameter: 6 in, height: 36 in', 'diameter: 14 in, height: 120 in'),
    );
    const end = glowing.panels.find(({ name }) => name === 'firebox fire end')!;
    expect(end.middle_K - end.overEdge_K).toBeGreaterThan(1023);
    expect(end.middle_K).toBeLessThan(1133);
    expect(Number.isFinite(end.buckles_K.clamped)).toBe(true);
  });
});

describe('scale', () => {
  it('takes the same from any plate, so that years go with its thickness', () => {
    const [thick, thin] = [study(of(PLAIN, '1/4 in')).scale!, study(of(PLAIN, '1/8 in')).scale!];
    expect(thin.hourly_m).toBe(thick.hourly_m);
    expect(thick.halfGone_years.likely / thin.halfGone_years.likely).toBeCloseTo(2, 9);
    expect(thick.halfGone_years.shed).toBeLessThan(thick.halfGone_years.likely);
    expect(thick.halfGone_years.likely).toBeLessThan(thick.halfGone_years.kept);
  });

  it('goes with how often the pit is fired, for how long, and how hot its coals lie', () => {
    const years = (use: string) => study(`${PLAIN}use: ${use}\n`).scale!.halfGone_years.likely;
    const usual = years('{ cooks: 50, lit: 8 h }');
    expect(years('{ cooks: 100 }')).toBeCloseTo(usual / 2, 9);
    expect(years('{ lit: 16 h }')).toBeCloseTo(usual / 2, 9);
    expect(years('{ coals: 600 °C }')).toBeLessThan(usual / 5);
    expect(years('{ scale: 0.2 mm }')).toBeCloseTo(2 * usual, 9);
  });

  it('is not told of stainless', () => {
    expect(study(changed(['  plate: 1/4 in', '  steel: stainless\n  plate: 1/4 in'])).scale).toBeNull();
  });
});

describe('what is said of it', () => {
  const option = (plate: string, text = PLAIN) => ({ label: plate, changes: [], design: designOf(of(text, plate)) });
  const said = (plates: string[], text?: string) => comparedAsUsual(plates.map((plate) => option(plate, text)));

  it('names the plates that stay flat and the panel that may not', () => {
    const mixed = said(['1/4 in', '1/8 in']);
    expect(flatnessWords(mixed)).toBe(
      'Under the full fire every flat panel stays flat with 1/4 in; the firebox fire end may oil-can with 1/8 in.',
    );
    expect(mixed.findings[0].costs).toEqual(
      expect.arrayContaining(['plate.buckling', 'plate.push_m', 'plate.halfGone_years']),
    );
    expect(mixed.verdict).toContain('heated to a larger share of what may buckle them');
    expect(said(['1/8 in', '1/4 in']).findings[0].buys).toContain('plate.halfGone_years');
  });

  it('says so where thin plate does as well, and for one pit alone', () => {
    expect(flatnessWords(said(['1/4 in', '3/8 in']))).toMatch(
      /stays flat .* in all of them: in that the thinnest does as well/,
    );
    expect(flatnessWords(said(['1/4 in']))).toBe('Every flat panel stays flat under the full fire.');
  });

  it('has no number missing, and no word on scale for stainless', () => {
    const notes = plateNotes(said(['1/4 in', '1/8 in'], BOX), sayIn('shop')).join(' ');
    expect(notes).not.toMatch(/NaN|undefined|null|Infinity/);
    expect(notes).toMatch(/thin plate scales no sooner there than thick/);
    const stainless = PLAIN.replaceAll('  plate: 1/4 in', '  steel: stainless\n  plate: 1/4 in');
    expect(plateNotes(said(['1/4 in'], stainless), sayIn('si')).join(' ')).not.toContain('Scale:');
  });

  it('is left out where no fire holds the target', () => {
    const made = said(['1/4 in']);
    const none = { ...made, options: made.options.map((each) => ({ ...each, studies: null })) };
    expect(plateNotes(none, sayIn('shop'))).toEqual([]);
    expect(flatnessWords(none)).toBe('');
  });
});
