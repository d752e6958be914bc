import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { expect, it } from 'vitest';
import { pageHtml } from './page-html.js';

const html = pageHtml({
  title: '"><script>alert(1)</script>.pair',
  script: 'https://file+.vscode-resource.example/dist/pages/drawing.js',
  style: 'https://file+.vscode-resource.example/dist/pages/drawing.css',
  cspSource: 'https://*.vscode-cdn.example',
  nonce: 'abc',
});

it('lets only the script with the nonce run, and loads from nowhere else', () => {
  const [, policy] = /Content-Security-Policy" content="([^"]*)"/.exec(html) ?? [];
  const directives = (policy ?? '').split('; ').map((directive) => directive.split(' '));
  expect(Object.fromEntries(directives.map(([name, ...sources]) => [name, sources.join(' ')]))).toEqual({
    // CSP Level 3: what no directive names falls back to default-src, but for base-uri and form-action.
    'default-src': "'none'",
    'script-src': "'nonce-abc'",
    'style-src': "https://*.vscode-cdn.example 'nonce-abc'",
    'base-uri': "'none'",
    'form-action': "'none'",
  });
  expect(html.match(/<script/g)).toHaveLength(1);
});

it('takes a file name for text', () => {
  const document = html.replace(/<(meta|link)([^>]*)>/g, '<$1$2/>').replace('defer', 'defer=""');
  expect(XMLValidator.validate(document)).toBe(true);
  expect(new XMLParser().parse(document).html.head.title).toBe('"><script>alert(1)</script>.pair');
});
