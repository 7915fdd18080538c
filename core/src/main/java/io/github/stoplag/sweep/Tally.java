package io.github.stoplag.sweep;

/**
 * What a sweep gathers from its chunks: statistics, or rows on their way to a file.
 *
 * <p>Each chunk goes into an empty tally on some thread, block by block; the tallies are then absorbed into the total
 * in chunk order by one thread at a time. So a total has the same bits however many threads ran, if absorbing into an
 * empty tally copies exactly.
 *
 * @param <T> the tally's own type
 */
public interface Tally<T extends Tally<T>> {
    /**
     * Adds the next rows of one chunk. Rejected rows have NaN in their outputs.
     *
     * @param rows the rows, valid during the call only
     */
    void add(RowBlock rows);

    /**
     * Adds what a later chunk's tally holds.
     *
     * @param later the tally of a later chunk
     */
    void absorb(T later);

    /** Empties the tally for another chunk. */
    void clear();
}
