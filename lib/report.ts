// What needs a document of its own and so stays out of a browser: pages as files. The package's second entry.
export { htmlPage, type StillPage } from './page/render/html.tsx';
