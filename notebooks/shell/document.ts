import { cautions, grounds, type HerdPage, say } from '../../lib/index.ts';

/** What the build knows of a page's files; addresses are relative to the document. */
export interface DocumentFiles {
  readonly script: string;
  readonly preloads: readonly string[];
  readonly styles: readonly string[];
  /** Languages besides English, which stands above their folders. */
  readonly languages: readonly string[];
}

/** Everything from here only, nothing inline; a page that asks for it may run generated code, that page alone. */
export function policyOf(page: HerdPage): string {
  const script = page.policy === 'generated' ? "'self' 'unsafe-eval'" : "'self'";
  return [
    "default-src 'none'",
    `script-src ${script}`,
    "style-src 'self'",
    "img-src 'self' data: blob:",
    "font-src 'self'",
    "connect-src 'self'",
    "worker-src 'self'",
    "manifest-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
}

/**
 * The document of one page: title, navigation and cautions can be read before any script has run.
 * @param policy left out where the development server needs its own scripts
 */
export function pageDocument(
  page: HerdPage,
  pages: readonly HerdPage[],
  files: DocumentFiles,
  policy?: string,
): string {
  const links = pages.map(
    ({ name, title, short = title }) =>
      `<li><a href="${name}.html"${name === page.name ? ' aria-current="page"' : ''}>${text(short)}</a></li>`,
  );
  const others = otherLanguages(page.name, files.languages);
  const elsewhere = others.map(
    ({ code, href, name }) => `<li><a lang="${code}" hreflang="${code}" href="${href}">${name}</a></li>`,
  );
  return `<!doctype html>
<html lang="${say`en`}">
<head>
<meta charset="utf-8">
${policy ? `<meta http-equiv="Content-Security-Policy" content="${policy}">` : ''}
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<title>${text(page.title)} · Evenhoof</title>
<meta name="description" content="${text(page.question)}">
${others.map(({ code, href }) => `<link rel="alternate" hreflang="${code}" href="${href}">`).join('\n')}
<link rel="icon" href="icon.svg" type="image/svg+xml">
<link rel="apple-touch-icon" href="icon-192.png">
<link rel="manifest" href="manifest.webmanifest">
<meta name="theme-color" content="${grounds.paper}">
${files.styles.map((href) => `<link rel="stylesheet" href="${href}">`).join('\n')}
${files.preloads.map((href) => `<link rel="modulepreload" href="${href}">`).join('\n')}
<script type="module" src="${files.script}"></script>
</head>
<body>
<a class="skip" href="#page">${say`To the page`}</a>
<header>
<p class="name">Evenhoof</p>
<nav aria-label="${say`Pages`}"><details class="folded"><summary>${say`Other pages`}</summary><ul>${links.join('')}${elsewhere.join('')}</ul></details></nav>
</header>
<div id="desk"></div>
<main id="page" tabindex="-1">
<h1>${text(page.title)}</h1>
<p class="question">${text(page.question)}</p>
<div id="blocks"><p class="waiting">${say`Reading the measurements …`}</p></div>
<noscript><p class="trouble">${say`The numbers are worked out here, on your device, by a script, and scripts are switched off. The command <code>evenhoof page</code> makes pages that need none.`}</p></noscript>
</main>
<footer>
<h2 class="unseen">${say`Cautions`}</h2>
<ul class="cautions">${cautions.map((caution) => `<li>${text(caution)}</li>`).join('')}</ul>
<p><a href="cautions.html">${say`The cautions in full`}</a></p>
</footer>
</body>
</html>
`;
}

/** The same page in other languages: each calls itself by its own name. */
function otherLanguages(page: string, languages: readonly string[]) {
  const here = say`en`;
  return ['en', ...languages]
    .filter((code) => code !== here)
    .map((code) => ({
      code,
      name: new Intl.DisplayNames(code, { type: 'language' }).of(code) ?? code,
      href: `${here === 'en' ? '' : '../'}${code === 'en' ? '' : `${code}/`}${page}.html`,
    }));
}

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

const text = (plain: string) => plain.replace(/[&<>"]/g, (sign) => ENTITIES[sign]);
