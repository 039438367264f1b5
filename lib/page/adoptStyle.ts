/**
 * Puts rules to the document that come with the code of one part and not with every page; what a script makes as a style
 * sheet of its own stands under the strictest policy.
 */
export function adoptStyle(rules: string): void {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(rules);
  document.adoptedStyleSheets.push(sheet);
}
