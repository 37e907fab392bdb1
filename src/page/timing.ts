/** Notes on the document what a piece of work took, for the bench and for whoever wonders. */
export function noteTime(work: string, milliseconds: number): void {
  document.documentElement.setAttribute(`data-ms-${work}`, milliseconds.toFixed(1));
}
