/** Work in hand: a small rule that fills. Without a share it stands still at nothing, and the words say what is waited for. */
export function FillingRule({
  words,
  share = null,
  width = 200,
}: {
  words: string;
  share?: number | null;
  width?: number;
}) {
  const filled = Math.max(0, Math.min(1, share ?? 0)) * width;
  const ticks = Array.from({ length: 21 }, (_, i) => `M${(i * width) / 20 + 0.5} 4v${i % 5 === 0 ? 9 : 4}`).join('');
  return (
    <div className="filling" role="status">
      <div>{words}</div>
      <svg width={width + 1} height={15} aria-hidden="true" className="picture">
        <rect x={0} y={6} width={filled} height={5} className="ink" />
        <path className="l-thin" d={`M0 13H${width + 1}${ticks}`} />
      </svg>
    </div>
  );
}
