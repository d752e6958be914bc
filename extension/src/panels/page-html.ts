/** The document of a panel's page: one script and one style of the extension's own, and nothing else may load or run. */

export interface PageHtml {
  readonly title: string;
  /** URIs that the webview can load. */
  readonly script: string;
  readonly style: string;
  /** The source of the extension's files, as the webview names it in policies. */
  readonly cspSource: string;
  /** Fresh for each document. The page may give it to a style of its own making. */
  readonly nonce: string;
}

export function pageHtml({ title, script, style, cspSource, nonce }: PageHtml): string {
  const policy = [
    `default-src 'none'`,
    `script-src 'nonce-${nonce}'`,
    `style-src ${cspSource} 'nonce-${nonce}'`,
    `base-uri 'none'`,
    `form-action 'none'`,
  ].join('; ');
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${escaped(policy)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(title)}</title>
<link rel="stylesheet" href="${escaped(style)}">
<script defer nonce="${escaped(nonce)}" src="${escaped(script)}"></script>
</head>
<body></body>
</html>
`;
}

const escaped = (text: string) =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
