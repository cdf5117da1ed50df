import type { Page, Request } from 'playwright-core';

export interface Watch {
  /** What went wrong on the page so far, in words. */
  faults(): readonly string[];
}

/** Kinds of request that a person's act makes: an answer with 4xx is a refusal there, and an ordinary one. */
const ACTS = new Set(['document', 'xhr', 'fetch']);

/**
 * Writes down what a person at the screen would not see and the page must not do: errors in scripts and on the
 * console, breaches of the content security policy, files that are missing, answers of 5xx, and requests to any
 * other host.
 */
export async function watch(page: Page): Promise<Watch> {
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(`script: ${error.message}`));
  page.on('console', (message) => {
    const text = message.text();
    // The answer itself is judged below, where its status and kind are known.
    if (message.type() === 'error' && !text.startsWith('Failed to load resource'))
      faults.push(`console: ${text}`);
    if (message.type() === 'warning') faults.push(`console: ${text}`);
  });
  page.on('response', (response) => {
    const status = response.status();
    const refused = status >= 400 && status < 500 && ACTS.has(response.request().resourceType());
    if (status >= 400 && !refused) faults.push(`${status} for ${response.url()}`);
  });
  page.on('request', (request) => {
    if (isElsewhere(page, request)) faults.push(`asks another host: ${request.url()}`);
  });
  await page.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', (event) => {
      // Told on the console, because that outlives the page that it happened on.
      console.error(`policy ${event.effectiveDirective} breached by ${event.blockedURI} ${event.sample}`);
    });
  });
  return { faults: () => [...faults] };
}

function isElsewhere(page: Page, request: Request): boolean {
  const { protocol, hostname } = new URL(request.url());
  if (page.isClosed() || !protocol.startsWith('http')) return false;
  return hostname !== '127.0.0.1' && hostname !== 'localhost';
}
