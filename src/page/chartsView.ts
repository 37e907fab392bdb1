import type { Scene } from '../draw/scene.js';
import { element, setText } from './dom.js';
import { chartTable } from './chartTable.js';
import { pageColour } from './look.js';
import type { ChartId, PictureReply, PicturedOption } from './protocol.js';
import { sceneElement } from './sceneView.js';

/** The curves of the current option, or of all, as a picture and as a table. */
export class ChartsView {
  chosen: ChartId = 'thermometer';
  /** what is in sight */
  scene: Scene | null = null;

  constructor(
    private readonly picture: HTMLElement,
    private readonly caption: HTMLElement,
    private readonly table: HTMLTableElement,
  ) {}

  /** Width that a picture may have [px]. */
  get width(): number {
    return Math.max(280, Math.floor(this.picture.clientWidth));
  }

  show({ chart, scene, caption }: Extract<PictureReply, { kind: 'chart' }>): void {
    // a picture of what was chosen before comes too late
    if (chart !== this.chosen) return;
    this.scene = scene;
    setText(this.caption, caption);
    this.picture.replaceChildren(
      scene ? sceneElement(scene, pageColour) : element('p', {}, 'There is nothing to draw: the warnings say why.'),
    );
  }

  /** Fills the table when it is open. */
  tabulate(options: PicturedOption[], current: PicturedOption | undefined): void {
    if (!this.table.closest('details')?.open) return;
    const [head = [], ...body] = current ? chartTable(this.chosen, options, current.result) : [];
    this.table.replaceChildren(
      element(
        'thead',
        {},
        element('tr', {}, ...head.map((text, i) => element(i === 0 && text === '' ? 'td' : 'th', {}, text))),
      ),
      element(
        'tbody',
        {},
        ...body.map(([first, ...rest]) =>
          element('tr', {}, element('th', { scope: 'row' }, first), ...rest.map((text) => element('td', {}, text))),
        ),
      ),
    );
  }
}
