import { siteConfig } from './scripts/siteConfig.ts';

// For `npm run dev` and `vite preview`; `scripts/build.mjs` builds.
export default siteConfig();
