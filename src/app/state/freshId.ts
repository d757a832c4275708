/** 128 random bits. (`randomUUID` exists on secure pages only.) */
export const freshId = (): string =>
  Array.from(crypto.getRandomValues(new Uint32Array(4)), (part) => part.toString(36)).join('-');
