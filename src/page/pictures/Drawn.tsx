/** Pictures that nothing is chosen in: the drop by run; time-current curves of each fuse and the conductors behind it. */
import { useReply } from '../state/use.ts';
import { Chart } from './Chart.tsx';
import { Dated } from './Dated.tsx';

export function Drawn({ kind }: { readonly kind: 'drop' | 'curves' }) {
  const { reply: found, late } = useReply(kind, null, kind);
  if (found === null) return <p class="quiet">Being computed …</p>;
  if ('why' in found) return <p class="quiet">{found.why}</p>;
  return (
    <Dated late={late}>
      {[found].flat().map((picture) => (
        <Chart key={picture.subtitle} picture={picture} />
      ))}
    </Dated>
  );
}
