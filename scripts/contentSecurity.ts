import type { Plugin } from 'vite';

/**
 * What the built page may load and run: its own files, and pictures that it makes itself. Everything else is refused, so
 * that markup in a job could not do anything even if it got in.
 */
const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' blob: data:",
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

/**
 * Headers that a server should send with every file. A page cannot say of itself who may frame it, and what a worker may
 * load is decided by the header on the worker's own file.
 */
export const SECURITY_HEADERS = {
  'Content-Security-Policy': `${POLICY}; frame-ancestors 'none'`,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
};

/** Writes the content security policy into the built page. The development server needs inline scripts and has none. */
export function contentSecurity(): Plugin {
  return {
    name: 'content-security',
    apply: 'build',
    transformIndexHtml: () => [
      {
        tag: 'meta',
        attrs: { 'http-equiv': 'Content-Security-Policy', content: POLICY },
        injectTo: 'head-prepend',
      },
    ],
  };
}
