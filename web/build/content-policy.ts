import type { Plugin } from 'vite'

/**
 * The content policy of the built page. Everything comes from the page's own
 * host; nothing inline runs; WebAssembly may be compiled. A host that sends
 * the same policy as a header changes nothing.
 */
export const policy = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self'",
  "img-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ')

/** Writes the content policy into the built page; the development server, which puts styles inline, goes without. */
export function contentPolicy(): Plugin {
  return {
    name: 'content-policy',
    apply: 'build',
    transformIndexHtml: () => [
      { tag: 'meta', attrs: { 'http-equiv': 'Content-Security-Policy', content: policy }, injectTo: 'head-prepend' },
    ],
  }
}
