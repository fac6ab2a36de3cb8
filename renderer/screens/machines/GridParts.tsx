import type { HTMLAttributes, ReactNode, Ref } from 'react';

/*
 * Parts of a grid whose rows are drawn only while in sight, each at a place of its own. A table's own elements give up
 * their meaning once they stand so, hence the roles; the grid keeps the focus and names the row it stands on.
 */

type Part = HTMLAttributes<HTMLDivElement> & { children?: ReactNode; ref?: Ref<HTMLDivElement> };

// biome-ignore-start lint/a11y/useSemanticElements: see above
// biome-ignore-start lint/a11y/useFocusableInteractive: see above
export const Grid = (props: Part) => <div role="grid" tabIndex={0} {...props} />;
export const GridRow = (props: Part) => <div role="row" {...props} />;
export const GridCell = (props: Part) => <div role="gridcell" {...props} />;
export const RowHead = (props: Part) => <div role="rowheader" {...props} />;
export const ColumnHead = (props: Part) => <div role="columnheader" {...props} />;
export const GridRows = (props: Part) => <div role="rowgroup" {...props} />;
// biome-ignore-end lint/a11y/useSemanticElements: see above
// biome-ignore-end lint/a11y/useFocusableInteractive: see above
