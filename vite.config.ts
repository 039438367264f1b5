import { defineConfig } from 'vite';
import { siteConfig } from './scripts/siteConfig.ts';

export default defineConfig(({ mode }) => siteConfig({ policy: mode === 'generated' ? 'generated' : 'strict' }));
