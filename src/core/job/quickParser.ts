import * as z from 'zod/mini';

/** Stands for a value that a schema does not accept. */
export const REFUSED: unique symbol = Symbol('refused');

/** Reads a value as its schema does, or refuses it without a reason. */
export type QuickParser = (value: unknown) => unknown;

/**
 * Compiles a schema into nested functions that give what `z.parse` gives, or `REFUSED` where it would find an issue.
 *
 * Zod carries a value and a list of issues through every layer of every field, which for a sound job is most of the work. Here a
 * field that is left out costs one comparison, and a part of the job that is left out is the same frozen object every time.
 * What is refused is parsed by zod, for its reasons. A kind of schema that is not known here is left to zod too.
 */
export function quickParser(schema: z.core.$ZodType): QuickParser {
  const parse = parserOf(schema);
  const checks = checksOf(schema);
  if (checks.length === 0) return parse;
  return (value) => {
    const read = parse(value);
    return read === REFUSED || checks.every((check) => check(read)) ? read : REFUSED;
  };
}

function parserOf(schema: z.core.$ZodType): QuickParser {
  const { def } = (schema as z.core.$ZodTypes)._zod;
  switch (def.type) {
    case 'object':
      return objectParser(def);
    case 'number':
      return (value) => (Number.isFinite(value) ? value : REFUSED);
    case 'string':
      return (value) => (typeof value === 'string' ? value : REFUSED);
    case 'boolean':
      return (value) => (typeof value === 'boolean' ? value : REFUSED);
    case 'enum':
      return oneOf(Object.values(def.entries));
    case 'literal':
      return oneOf(def.values);
    case 'optional':
      return instead(quickParser(def.innerType), undefined, undefined);
    case 'nullable':
      return instead(quickParser(def.innerType), null, null);
    case 'default':
      return instead(quickParser(def.innerType), undefined, frozen(def.defaultValue));
    case 'prefault': {
      const parse = quickParser(def.innerType);
      return instead(parse, undefined, frozen(parse(def.defaultValue)));
    }
    case 'pipe': {
      const [first, then] = [quickParser(def.in), quickParser(def.out)];
      return (value) => {
        const read = first(value);
        return read === REFUSED ? REFUSED : then(read);
      };
    }
    case 'transform':
      return (value) => {
        const payload = { value, issues: [] };
        const made = def.transform(value, payload as never);
        return payload.issues.length > 0 ? REFUSED : made;
      };
    default:
      return (value) => {
        const read = z.safeParse(schema, value);
        return read.success ? read.data : REFUSED;
      };
  }
}

/** Gives `result` for one value, and leaves the others to a parser. */
const instead =
  (parse: QuickParser, one: null | undefined, result: unknown): QuickParser =>
  (value) =>
    value === one ? result : parse(value);

function oneOf(values: readonly unknown[]): QuickParser {
  const allowed = new Set(values);
  return (value) => (allowed.has(value) ? value : REFUSED);
}

/** A strict object: the fields of its shape in order, those without a value left out where they are absent; no others. */
function objectParser({ shape, catchall }: z.core.$ZodObjectDef): QuickParser {
  if (catchall?._zod.def.type !== 'never') throw new Error('A job has strict objects only.');
  const fields = Object.entries(shape).map(([key, field]) => ({ key, parse: quickParser(field) }));
  const keys = new Set(Object.keys(shape));
  return (value) => {
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return REFUSED;
    for (const key in value) if (!keys.has(key)) return REFUSED;
    const read: Record<string, unknown> = {};
    for (const { key, parse } of fields) {
      const one = parse((value as Record<string, unknown>)[key]);
      if (one === REFUSED) return REFUSED;
      if (one !== undefined || key in value) read[key] = one;
    }
    return read;
  };
}

type Check = (value: unknown) => boolean;

function checksOf(schema: z.core.$ZodType): Check[] {
  const { def, traits } = schema._zod;
  const own = traits.has('$ZodCheck') ? [schema as unknown as z.core.$ZodCheck] : [];
  return [...own, ...(def.checks ?? [])].flatMap((check) => checkOf(check as z.core.$ZodChecks) ?? []);
}

/** Null for what checks nothing. */
function checkOf(check: z.core.$ZodChecks): Check | null {
  const { def } = check._zod;
  if ((def.check as string) === 'meta') return null;
  if (def.check === 'greater_than' && def.inclusive) return (value) => (value as number) >= (def.value as number);
  if (def.check === 'less_than' && def.inclusive) return (value) => (value as number) <= (def.value as number);
  return (value) => {
    const payload: z.core.ParsePayload = { value, issues: [] };
    check._zod.check(payload as never);
    return payload.issues.length === 0;
  };
}

/** So that what many jobs share is the same for all. */
function frozen<Value>(value: Value): Value {
  if (typeof value === 'object' && value !== null) {
    for (const inner of Object.values(value)) frozen(inner);
    Object.freeze(value);
  }
  return value;
}
