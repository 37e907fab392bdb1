import { describe, expect, it } from 'vitest';
import { expectWholeReport } from './support/randomReports.js';
import { compared, documentFrom, htmlOf, pdfOf, plates, renamed } from './support/reports.js';

const HOSTILE: [string, string][] = [
  ['a script', '<script>alert(1)</script>'],
  ['a closed attribute', '"><img src=x onerror=alert(1)>'],
  ['quotes', "'; DROP TABLE pits; --"],
  ['entities', '&lt;b&gt; &amp; <b>'],
  ['marks of direction and control', '\u202egnp.exe \u2066mixed\u2069 \u0000\u0007\u001b[31m'],
  ['right-to-left text', 'مدخنة الفناء الخلفي'],
  ['emoji', '🔥👩‍🏭🔥'],
  ['a formula', '=1+1'],
  ['a closed style', ']]></style><svg onload=alert(1)>'],
  ['one long word', 'x'.repeat(400)],
  ['many words', 'long words '.repeat(60)],
];

const OURS = (
  '!doctype bdi body caption desc div figcaption figure h1 h2 h3 head header html li main meta p path section small style ' +
  'svg table tbody td text th thead title tr ul'
).split(' ');

describe('numbers near the limits of what is read', () => {
  it.each([3, 14, 159, 265, 358])('random design %d: a whole report without a broken number', expectWholeReport);
});

describe('hostile names', () => {
  const plain = compared(plates(['1/4 in', '3/16 in']));

  it.each(HOSTILE)('%s: inert in HTML, and a page in PDF', (_, name) => {
    const document = documentFrom(renamed(plain, name));
    const text = htmlOf(document);
    expect(text).not.toMatch(/<script|<img|<b>|<svg onload/i);
    expect(text).not.toMatch(/[\u0000-\u0008\u000b-\u001f\u202a-\u202e\u2066-\u2069]/);
    // every angle bracket is one of ours
    const tags = [...text.replace(/<style>[\s\S]*?<\/style>/, '').matchAll(/<\/?([a-z0-9!]+)/gi)];
    const strange = tags.map(([, tag]) => tag.toLowerCase()).filter((tag) => !OURS.includes(tag));
    expect(strange).toEqual([]);
    expect(pdfOf(document).subarray(0, 5).toString()).toBe('%PDF-');
  });
});
