import type { RequestHandler } from 'express';

/** Nothing but this server's own files; no inline script or style, no frame around it. */
export const contentSecurityPolicy = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data:",
  "connect-src 'self'",
  "form-action 'none'",
  "base-uri 'none'",
  "object-src 'none'",
  "frame-ancestors 'none'",
].join('; ');

/** On every response, errors and pages alike. Findings are a store's business: nothing is cached unless a route says so. */
export const setSafeHeaders: RequestHandler = (_request, response, next) => {
  response.set({
    'Content-Security-Policy': contentSecurityPolicy,
    'X-Content-Type-Options': 'nosniff',
    'Referrer-Policy': 'no-referrer',
    'Cross-Origin-Opener-Policy': 'same-origin',
    'Cross-Origin-Resource-Policy': 'same-origin',
    'Permissions-Policy': 'camera=(), geolocation=(), microphone=()',
    'Cache-Control': 'no-store',
  });
  next();
};
