/**
 * A course that a case gives by its points: straight between them, held before the first and after the last.
 *
 * It is part of the case, not of what is checked: so it interpolates by itself, as an estimate runs no `interpolate`.
 * @param name of the course, for messages
 * @throws RangeError when there are not as many values as times, or times do not rise
 */
export function givenCurve(
  name: string,
  times: readonly number[],
  values: readonly number[],
): (time: number) => number {
  if (times.length !== values.length || times.length === 0)
    throw new RangeError(`${name} needs as many values as times`);
  if (times.some((time, i) => i > 0 && time <= times[i - 1])) throw new RangeError(`times of ${name} must rise`);
  return (time) => {
    const next = times.findIndex((each) => each >= time);
    if (next < 0) return values[values.length - 1];
    if (next === 0) return values[0];
    const share = (time - times[next - 1]) / (times[next] - times[next - 1]);
    return values[next - 1] + share * (values[next] - values[next - 1]);
  };
}
