/// <reference types="vitest/config" />
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

const reports = process.env.TEST_REPORTS;

export default defineConfig({
  root: 'src',
  publicDir: '../public',
  base: './',
  plugins: [react()],
  server: { host: '127.0.0.1', port: 4173 },
  build: { outDir: '../dist', emptyOutDir: true, target: 'es2022' },
  worker: { format: 'es' },
  test: {
    root: import.meta.dirname,
    include: ['tests/**/*.test.{ts,tsx}'],
    testTimeout: 30_000,
    reporters: reports ? ['default', ['json', { outputFile: `${reports}/unit.json` }]] : ['default'],
  },
});
