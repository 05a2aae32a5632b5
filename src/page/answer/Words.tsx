/** Sentences of the command line name keys of the design between backticks: here they stand in letters of their own. */
export const Words = ({ text }: { readonly text: string }) => (
  <>{text.split('`').map((part, i) => (i % 2 === 0 ? part : <code key={i}>{part}</code>))}</>
);
