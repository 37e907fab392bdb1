import type { Page } from 'playwright-core';

/**
 * Texts of the page's drawing that lie over the outline of a part or under a handle, as the browser has set them. An
 * outline is a line two pixels thick; where something that is drawn later covers it there is none.
 */
export function struckTexts(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const svg = document.querySelector<SVGSVGElement>('#drawing svg')!;
    const all = [...svg.children];
    const paths = all.filter((each): each is SVGPathElement => each instanceof SVGPathElement);
    const at = (path: SVGPathElement) => all.indexOf(path);
    const outlines = paths
      .filter((path) => path.getAttribute('stroke-width') === '2')
      .map((path) => {
        const points = [];
        const long = path.getTotalLength();
        for (let along = 0; along <= long; along += 0.5) points.push(path.getPointAtLength(along));
        return { path, points };
      });
    const { left, top } = svg.getBoundingClientRect();
    const handles = [...document.querySelectorAll('.grip')].map((each) => {
      const { x, y, width, height } = each.getBoundingClientRect();
      return [x + width / 2 - left, y + height / 2 - top];
    });
    return [...svg.querySelectorAll('text')].flatMap((text) => {
      const seen = text.getBoundingClientRect();
      // a line of text is higher than its letters
      const thin = text.hasAttribute('transform') ? [0.2 * seen.width, 1] : [1, 0.2 * seen.height];
      const box = {
        left: seen.left - left + thin[0],
        right: seen.right - left - thin[0],
        top: seen.top - top + thin[1],
        bottom: seen.bottom - top - thin[1],
      };
      const isIn = (x: number, y: number) => x > box.left && x < box.right && y > box.top && y < box.bottom;
      const written = all.indexOf(text);
      const strikes = outlines.some(({ path, points }) => {
        const covers = paths.filter(
          (other) => at(other) > at(path) && at(other) < written - 1 && other.getAttribute('fill') !== 'none',
        );
        return points.some((point) => isIn(point.x, point.y) && !covers.some((other) => other.isPointInFill(point)));
      });
      const hidden = handles.some(([x, y]) => isIn(x, y));
      return [
        ...(strikes ? [`'${text.textContent}' lies over an outline`] : []),
        ...(hidden ? [`'${text.textContent}' lies under a handle`] : []),
      ];
    });
  });
}
