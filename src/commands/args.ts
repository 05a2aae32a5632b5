/** What stands on the command line behind the name of a command. */
import { parseArgs } from 'node:util';

/** Names of options: that take no value, one value, or one value each of several times. */
interface Options<F extends string, O extends string, M extends string> {
  readonly flags?: readonly F[];
  readonly one?: readonly O[];
  readonly many?: readonly M[];
}

/** Throws what Node.js says of an option that is not among them. */
export function argsOf<F extends string = never, O extends string = never, M extends string = never>(
  argv: string[],
  { flags = [], one = [], many = [] }: Options<F, O, M>,
) {
  const { positionals, values } = parseArgs({
    args: argv,
    allowPositionals: true,
    options: Object.fromEntries([
      ...flags.map((name) => [name, { type: 'boolean' as const }] as const),
      ...one.map((name) => [name, { type: 'string' as const }] as const),
      ...many.map((name) => [name, { type: 'string' as const, multiple: true }] as const),
    ]),
  });
  return {
    positionals,
    values: values as { readonly [N in F]?: boolean } & { readonly [N in O]?: string } & {
      readonly [N in M]?: string[];
    },
  };
}
