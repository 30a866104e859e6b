export interface Part {
  readonly field: string;
  readonly name: string;
  readonly content: string | Uint8Array<ArrayBuffer>;
  readonly type?: string;
}

export function formOf(parts: readonly Part[]): FormData {
  const form = new FormData();
  for (const { field, name, content, type } of parts) {
    form.append(field, new File([content], name, type === undefined ? {} : { type }));
  }
  return form;
}

/** Sends files to a test server. */
export function upload(
  base: string,
  parts: readonly Part[],
  headers: Record<string, string> = {},
): Promise<Response> {
  return fetch(`${base}/api/v1/exports`, { method: 'POST', body: formOf(parts), headers });
}

export interface ServerEvent {
  readonly name: string;
  readonly data: unknown;
}

/** Every event of one analysis, until the server ends the stream. */
export async function eventsOf(base: string, id: string): Promise<ServerEvent[]> {
  return eventsAt(`${base}/api/v1/exports/${id}/events`);
}

export async function eventsAt(address: string): Promise<ServerEvent[]> {
  const text = await (await fetch(address)).text();
  return text.split('\n\n').flatMap((block) => {
    const name = /^event: (.*)$/m.exec(block)?.[1];
    const data = /^data: (.*)$/m.exec(block)?.[1];
    return name === undefined || data === undefined ? [] : [{ name, data: JSON.parse(data) as unknown }];
  });
}

/** The code in the body of a refusal. */
export async function codeOf(response: Response): Promise<string> {
  return ((await response.json()) as { error: { code: string } }).error.code;
}
