import { element, part } from './dom.js';
import { carriesDesigns, designsIn, linkOf, type Keeper } from './kept.js';
import { announce, tell } from './notices.js';
import type { Kept, Workbench } from './workbench.js';

/** All is kept when nothing has changed for so long [ms]. */
const KEEP_AFTER = 300;

/** Sees to it that nothing is lost: keeps all options in the browser, finds them again, and gives and takes links. */
export class Keeping {
  /** what the page came with */
  private readonly given: Kept;
  private timer = 0;
  private last = '';
  /** the browser keeps nothing, and there is something to lose */
  private unkept = false;

  /** @param renew shows the options when others have taken their place */
  constructor(
    private readonly bench: Workbench,
    private readonly keeper: Keeper,
    private readonly renew: () => void,
  ) {
    this.given = bench.keep();
    part('link').addEventListener('click', () => void this.giveLink());
    part('start-over').addEventListener('click', () => this.startOver());
    window.addEventListener('hashchange', () => {
      if (!carriesDesigns(location.hash)) return;
      void designsIn(location.hash).then((found) => {
        this.takeLink(found);
        this.renew();
      });
    });
    window.addEventListener('pagehide', () => this.keep());
    window.addEventListener('beforeunload', (event) => {
      if (this.unkept) event.preventDefault();
    });
  }

  /**
   * Brings back what was here when the page was last open.
   *
   * @param link what the address carried, if it did
   */
  open(link: { found: Kept | null } | null): void {
    const kept = this.keeper.find();
    if (kept && this.bench.take(kept) === null) {
      this.bench.forgetSteps();
      if (!link && !sameDesigns(kept, this.given)) {
        tell('This is what was here when the page was last open.', { 'Start over': () => this.startOver() });
      }
    } else if (kept) tell('What this browser had kept of this page can no longer be read; it was left out.');
    if (link) this.takeLink(link.found);
  }

  keepSoon(): void {
    window.clearTimeout(this.timer);
    this.timer = window.setTimeout(() => this.keep(), KEEP_AFTER);
  }

  /** It is kept in a file now. */
  saved(): void {
    this.unkept = false;
  }

  /** Keeps all options, or says that the browser doesn't. */
  private keep(): void {
    window.clearTimeout(this.timer);
    const kept = this.bench.keep();
    if (JSON.stringify(kept) === this.last) return;
    this.last = JSON.stringify(kept);
    const allowed = this.keeper.keep(kept);
    part('not-kept').hidden = allowed;
    this.unkept = !allowed && !sameDesigns(kept, this.given);
  }

  private async giveLink(): Promise<void> {
    const address = bareAddress() + (await linkOf(this.bench));
    const field = element('input', { type: 'text', readonly: true, id: 'link-text', 'aria-label': 'Link' });
    field.value = address;
    let how = 'It is copied.';
    try {
      await navigator.clipboard.writeText(address);
    } catch {
      how = 'Copy it from here:';
    }
    tell(`The design is in this link itself; nothing is sent anywhere. ${how}`, {}, field);
    field.select();
  }

  private takeLink(found: Kept | null): void {
    // so that a reload keeps what is changed from here on
    history.replaceState(null, '', bareAddress());
    tell(
      found && this.bench.take(found) === null
        ? 'This design came with the link. Undo brings back what was here before.'
        : 'The link is cut short or damaged: no design could be read from it. Ask for it again.',
    );
  }

  private startOver(): void {
    this.bench.take(this.given);
    this.renew();
    part('notice').hidden = true;
    announce('This is the design that the page came with. Undo brings back what was here.');
  }
}

function bareAddress(): string {
  return location.href.replace(/#.*$/, '');
}

/** The same designs under the same names? */
function sameDesigns(a: Kept, b: Kept): boolean {
  return JSON.stringify(a.options) === JSON.stringify(b.options);
}
