declare const unit: unique symbol;

/** A number or text that may not be mixed up with another of the same shape. Made only in core/units. */
export type Brand<T, Name extends string> = T & { readonly [unit]: Name };
