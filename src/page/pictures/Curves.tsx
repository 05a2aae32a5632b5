/** Time-current curves: each fuse of the feed, and the conductors behind it. */
import { usePicture } from '../state/use.ts';
import { Chart } from './Chart.tsx';

export function Curves() {
  const pictures = usePicture('curves', null, 'curves');
  if (pictures === null) return <p class="quiet">Being computed …</p>;
  if ('why' in pictures) return <p class="quiet">{pictures.why}</p>;
  return (
    <>
      {pictures.map((picture) => (
        <Chart key={picture.name} picture={picture} />
      ))}
    </>
  );
}
