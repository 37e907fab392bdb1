import { plainText } from '../words/plainText.js';
import type { Scene } from '../draw/scene.js';
import { chartPng, chartSvg } from './chartFiles.js';
import { CHART_LABELS } from './chartLabels.js';
import { chartTable } from './chartTable.js';
import { element, part, setText, tableRows } from './dom.js';
import { saveFile } from './files.js';
import { pageColour } from './look.js';
import type { ChartId, Pictured, PictureRequest } from './protocol.js';
import { sceneElement } from './sceneView.js';
import type { Workbench } from './workbench.js';

/** The curves of the current option, or of all, as a picture, as a table and as a file. */
export class ChartsView {
  private chosen: ChartId = 'thermometer';
  /** what is in sight */
  private scene: Scene | null = null;
  private readonly picture = part('chart');
  private readonly details = part<HTMLDetailsElement>('chart-details');

  constructor(
    private readonly bench: Workbench,
    private readonly ask: (request: PictureRequest) => void,
  ) {
    const choices = (Object.keys(CHART_LABELS) as ChartId[]).map((id) => {
      const pressed = id === this.chosen;
      const button = element('button', { type: 'button', 'aria-pressed': pressed, 'data-chart': id }, CHART_LABELS[id]);
      button.addEventListener('click', () => {
        this.chosen = id;
        for (const each of choices) each.setAttribute('aria-pressed', String(each === button));
        this.update();
      });
      return button;
    });
    part('chart-choice').append(...choices);
    this.details.addEventListener('toggle', () => this.tabulate());
    for (const kind of ['svg', 'png'] as const) {
      part(`chart-${kind}`).addEventListener('click', () => void this.save(kind));
    }
  }

  /** Has the curves drawn as the options are now; they come a moment later. */
  update(): void {
    this.tabulate();
    const { full: result } = this.bench.current;
    if (!result) return;
    const { chosen: chart, picture, bench } = this;
    const width = Math.max(280, Math.floor(picture.clientWidth));
    this.ask({ kind: 'chart', chart, width, result, options: chart === 'options' ? bench.pictured : [] });
  }

  show({ chart, scene, caption }: Pictured<'chart'>): void {
    // a picture of what was chosen before comes too late
    if (chart !== this.chosen) return;
    this.scene = scene;
    setText(part('chart-caption'), caption);
    this.picture.replaceChildren(
      scene ? sceneElement(scene, pageColour) : element('p', {}, 'There is nothing to draw: the warnings say why.'),
    );
  }

  /** Says that there is none by our fault. */
  fail(fault: string): void {
    setText(part('chart-caption'), `Our fault, not yours: no picture (${plainText(fault, 200)}).`);
  }

  /** Fills the table when it is open. */
  private tabulate(): void {
    if (!this.details.open) return;
    const { current, pictured } = this.bench;
    const [head = [], ...body] = current.full ? chartTable(this.chosen, pictured, current.full) : [];
    part('chart-table').replaceChildren(...tableRows(head, body));
  }

  /** The chart in sight as a file, as it is on paper. */
  private async save(kind: 'svg' | 'png'): Promise<void> {
    const { scene, chosen } = this;
    if (!scene) return;
    const name = `${this.bench.current.design.name} ${CHART_LABELS[chosen]}`;
    const text = kind === 'svg' ? chartSvg(scene) : await chartPng(scene);
    saveFile({ text, name, ending: kind, type: kind === 'svg' ? 'image/svg+xml' : 'image/png' });
  }
}
