/** The share of the limit that is left, as a bar and in figures. */
interface MarginProps {
  readonly share: number;
  readonly marginal: boolean;
}

export function Margin({ share, marginal }: MarginProps) {
  const left = Math.max(0, Math.min(1, share));
  return (
    <span class={`margin ${marginal ? 'close' : ''}`}>
      <svg viewBox="0 0 60 8" width="60" height="8" aria-hidden="true">
        <rect class="bar" x="0.5" y="0.5" width="59" height="7" />
        <rect class="left" x="0.5" y="0.5" width={59 * left} height="7" />
      </svg>
      {wordsOf(share)}
      {marginal ? ', close' : ''}
    </span>
  );
}

/** Beyond this a percentage says nothing more. Arbitrary. */
const FAR = 10;

function wordsOf(share: number): string {
  if (share < -FAR) return 'far over';
  const percent = Math.abs(share * 100).toFixed(Math.abs(share) < 0.1 ? 1 : 0);
  return `${share < 0 ? 'over by' : 'margin'} ${percent} %`;
}
