import { describe, expect, it } from 'vitest';
import { escapeMarkup } from '../../src/draw/sceneSvg.js';
import { asDrawn, compared, designOf, documentFrom, documentOf, htmlOf, plates, sha256 } from './support/reports.js';

const thick = compared(plates(['1/4 in', '1/8 in']));
const html = htmlOf(documentFrom(thick));
const attributes = (of: string, name: string) =>
  [...of.matchAll(new RegExp(` ${name}="([^"]*)"`, 'g'))].map(([, value]) => value);

describe('the HTML report', () => {
  it('is one file: no script, nothing fetched, one style sheet that its policy names', () => {
    expect(html).not.toMatch(/<script|<link|<iframe|<img|javascript:|@import|\son\w+=|\sstyle=/i);
    expect(html).not.toMatch(/(src|href|url)\s*[=(]\s*["']?\s*(https?:)?\/\//i);
    const [, policy] = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(html)!;
    const [, style] = /<style>([\s\S]*?)<\/style>/.exec(html)!;
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain(`style-src 'sha256-${sha256(style)}'`);
    expect(policy).not.toContain('unsafe');
    expect(html.match(/<style/g)).toHaveLength(1);
  });

  it('carries its font', () => {
    expect(
      html.match(/@font-face\{font-family:Barlow;font-weight:\d00;src:url\(data:font\/woff2;base64,/g),
    ).toHaveLength(3);
  });

  it('gives every picture a title and a description of its own', () => {
    const ids = attributes(html, 'id');
    expect(new Set(ids).size).toBe(ids.length);
    const pictures = html.match(/<svg /g)!;
    expect(pictures.length).toBeGreaterThan(6);
    const named = [...html.matchAll(/<svg [^>]*role="img" aria-labelledby="(\S+) (\S+)"/g)];
    expect(named).toHaveLength(pictures.length);
    for (const [, title, description] of named) {
      expect(html).toMatch(new RegExp(`<title id="${title}">[^<]+</title><desc id="${description}">[^<]+</desc>`));
    }
    for (const label of attributes(html, 'aria-labelledby').flatMap((value) => value.split(' ')))
      expect(ids).toContain(label);
  });

  it('marks heads of columns and rows in its tables', () => {
    expect(html.match(/<table>/g)!.length).toBeGreaterThan(8);
    expect(html).toContain('<th scope="col"><bdi>1/8&nbsp;in</bdi></th>');
    expect(html).toMatch(/<th scope="row">steel is soaked<\/th>/);
  });

  it('closes what it opens', () => {
    for (const tag of [
      'section',
      'table',
      'tr',
      'td',
      'th',
      'figure',
      'svg',
      'text',
      'div',
      'p',
      'ul',
      'bdi',
      'small',
    ]) {
      const opened = html.match(new RegExp(`<${tag}[ >]`, 'g'))?.length ?? 0;
      expect(html.match(new RegExp(`</${tag}>`, 'g'))?.length ?? 0, tag).toBe(opened);
    }
  });

  it('is the same bytes each time', () => {
    expect(htmlOf(documentFrom(thick))).toBe(html);
  });
});

describe('hostile names', () => {
  it('are escaped in elements and attributes alike', () => {
    expect(escapeMarkup(`<a href="x" title='y'>&`)).toBe('&lt;a href=&quot;x&quot; title=&#39;y&#39;&gt;&amp;');
  });
});

describe('another paper', () => {
  it('is set for its size', () => {
    const a4 = htmlOf(documentOf(asDrawn(designOf('plain-24')), 'a4'), 'a4');
    expect(a4).toContain('@page{size:A4');
    expect(html).toContain('@page{size:letter');
  });
});
