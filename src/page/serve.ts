/** Work that a worker does for the page, or, where a browser starts no worker, the page itself. */

type Answer = (request: unknown) => unknown;

/** Where the scripts of the workers put what they can do when the page itself runs them. */
const place = globalThis as unknown as { pitwrightWork?: Record<string, Answer> };

/** Takes requests: those posted to this worker, or on the page those handed to it by name. */
export function serve<Request, Reply>(name: string, answer: (request: Request) => Reply): void {
  if (typeof document !== 'undefined') {
    place.pitwrightWork = { ...place.pitwrightWork, [name]: answer as Answer };
    return;
  }
  const scope = globalThis as unknown as {
    onmessage: (event: { data: Request }) => void;
    postMessage(reply: Reply): void;
  };
  scope.onmessage = ({ data }) => scope.postMessage(answer(data));
}

const loading = new Map<string, Promise<void>>();

/** Does the work on the page, which stands still meanwhile. */
export async function workHere<Reply>(source: string, name: string, request: unknown): Promise<Reply> {
  let loaded = loading.get(source);
  if (!loaded) {
    loaded = new Promise((done, failed) => {
      const script = document.createElement('script');
      script.src = source;
      script.onload = () => done();
      script.onerror = () => failed(new Error('the script of the solver may not run in this browser'));
      document.body.append(script);
    });
    loading.set(source, loaded);
  }
  await loaded;
  // a frame for the hand before the work
  await new Promise((done) => setTimeout(done));
  return place.pitwrightWork![name](request) as Reply;
}
