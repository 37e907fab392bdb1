/** Labels made unlike: what stands twice gets a number that no other has. */
export function distinctLabels<T extends { label: string }>(options: readonly T[]): T[] {
  const taken = new Set(options.map(({ label }) => label));
  const seen = new Set<string>();
  return options.map((option) => {
    const label = freeLabel(option.label, (each) => (each === option.label ? seen : taken).has(each));
    seen.add(label);
    taken.add(label);
    return label === option.label ? option : { ...option, label };
  });
}

/** A label, with the first number that makes it one that isn't taken. */
export function freeLabel(label: string, isTaken: (label: string) => boolean): string {
  let free = label;
  for (let count = 2; isTaken(free); count++) free = `${label} (${count})`;
  return free;
}
