/** Labels made unlike: what stands twice gets a number that no other has. */
export function distinctLabels<T extends { label: string }>(options: readonly T[]): T[] {
  const taken = new Set(options.map(({ label }) => label));
  const seen = new Set<string>();
  return options.map((option) => {
    let { label } = option;
    for (let count = 2; seen.has(label); count++) {
      const numbered = `${option.label} (${count})`;
      if (!taken.has(numbered)) label = numbered;
    }
    seen.add(label);
    taken.add(label);
    return label === option.label ? option : { ...option, label };
  });
}
