import { plainText } from '../words/plainText.js';
import { element } from './dom.js';

/** More than any design; the reader refuses far less with better words [bytes]. */
const LARGEST = 2_000_000;

/** Hands over the text of a file that the person picks. */
export function chooseFile(input: HTMLInputElement, opened: (text: string, name: string) => void): void {
  input.addEventListener('change', () => {
    const file = input.files?.[0];
    // picking the same file again must count as a change
    input.value = '';
    if (!file) return;
    void file
      .slice(0, LARGEST)
      .text()
      .then((text) => opened(text, file.name));
  });
}

/** Saves a text, or a picture, as a file under a name of its own. */
export function saveFile({
  text,
  name,
  ending,
  type,
}: Record<'name' | 'ending' | 'type', string> & { text: string | Blob }): void {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = element('a', { href: address, download: `${fileName(name)}.${ending}` });
  document.body.append(link);
  link.click();
  link.remove();
  window.setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/** A name that every file system takes. */
export function fileName(name: string): string {
  const plain = plainText(name, 60)
    .normalize('NFKD')
    .replace(/[^A-Za-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .toLowerCase();
  return plain || 'pit';
}
