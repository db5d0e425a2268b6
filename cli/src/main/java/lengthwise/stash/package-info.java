/**
 * The cloth that a maker has: bolts and remnants, in one file of an SQLite database, and what of it runs have reserved and
 * spent. The only package that knows JDBC. Lengths are whole micrometres, prices whole millionths of the maker's currency.
 */
@NullMarked
package lengthwise.stash;

import org.jspecify.annotations.NullMarked;
