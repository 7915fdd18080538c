package io.github.stoplag.examples.spark;

import java.util.Collections;
import java.util.Map;
import java.util.SortedMap;
import java.util.concurrent.ConcurrentSkipListMap;
import org.apache.spark.util.AccumulatorV2;

/**
 * Gathers the results of chunks on the driver. A chunk computed twice, because a task was repeated, gives the same
 * bytes and counts once. Spark looks at it from other threads than the one that adds.
 */
final class ChunkStatistics extends AccumulatorV2<Map.Entry<Long, byte[]>, SortedMap<Long, byte[]>> {
    private static final long serialVersionUID = 2L;

    private final ConcurrentSkipListMap<Long, byte[]> byChunk = new ConcurrentSkipListMap<>();

    @Override
    public boolean isZero() {
        return byChunk.isEmpty();
    }

    @Override
    public ChunkStatistics copy() {
        ChunkStatistics copy = new ChunkStatistics();
        copy.byChunk.putAll(byChunk);
        return copy;
    }

    @Override
    public void reset() {
        byChunk.clear();
    }

    @Override
    public void add(Map.Entry<Long, byte[]> chunk) {
        byChunk.put(chunk.getKey(), chunk.getValue());
    }

    @Override
    public void merge(AccumulatorV2<Map.Entry<Long, byte[]>, SortedMap<Long, byte[]>> other) {
        byChunk.putAll(other.value());
    }

    /** A view, not a copy: with many chunks a copy for each task would fill the driver. */
    @Override
    public SortedMap<Long, byte[]> value() {
        return Collections.unmodifiableSortedMap(byChunk);
    }
}
