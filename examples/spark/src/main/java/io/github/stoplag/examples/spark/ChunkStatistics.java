package io.github.stoplag.examples.spark;

import java.util.Collections;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.spark.util.AccumulatorV2;

/**
 * Gathers the results of chunks on the driver. A chunk computed twice, because a task was repeated, gives the same bytes and counts
 * once.
 */
final class ChunkStatistics extends AccumulatorV2<Map.Entry<Long, byte[]>, SortedMap<Long, byte[]>> {
    private static final long serialVersionUID = 1L;

    private final TreeMap<Long, byte[]> byChunk = new TreeMap<>();

    @Override
    public boolean isZero() {
        return byChunk.isEmpty();
    }

    @Override
    public ChunkStatistics copy() {
        ChunkStatistics copy = new ChunkStatistics();
        synchronized (byChunk) {
            copy.byChunk.putAll(byChunk);
        }
        return copy;
    }

    @Override
    public void reset() {
        synchronized (byChunk) {
            byChunk.clear();
        }
    }

    @Override
    public void add(Map.Entry<Long, byte[]> chunk) {
        synchronized (byChunk) {
            byChunk.put(chunk.getKey(), chunk.getValue());
        }
    }

    @Override
    public void merge(AccumulatorV2<Map.Entry<Long, byte[]>, SortedMap<Long, byte[]>> other) {
        SortedMap<Long, byte[]> theirs = other.value();
        synchronized (byChunk) {
            byChunk.putAll(theirs);
        }
    }

    @Override
    public SortedMap<Long, byte[]> value() {
        synchronized (byChunk) {
            return Collections.unmodifiableSortedMap(new TreeMap<>(byChunk));
        }
    }
}
