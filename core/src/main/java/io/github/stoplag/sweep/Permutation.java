package io.github.stoplag.sweep;

/**
 * A keyed permutation of 0 .. n−1 that is read at any place without a table: a Feistel network on 2h bits, repeated
 * until the value falls below n (cycle walking, on average fewer than four turns).
 *
 * <p>Source: Luby &amp; Rackoff 1988 for the network; Black &amp; Rogaway, Ciphers with arbitrary finite domains,
 * CT-RSA 2002, for cycle walking (both from memory; tested to be a permutation).
 */
final class Permutation {
    private static final int ROUNDS = 4;

    private final long n;
    private final int halfBits;
    private final long mask;
    private final long[] keys = new long[ROUNDS];

    Permutation(long n, long key) {
        this.n = n;
        int bits = Math.max(2, 64 - Long.numberOfLeadingZeros(n - 1));
        halfBits = (bits + 1) / 2;
        mask = (1L << halfBits) - 1;
        for (int round = 0; round < ROUNDS; round++) {
            keys[round] = CounterRandom.of(key).bits(0, round);
        }
    }

    long at(long index) {
        long value = index;
        do {
            long left = value >>> halfBits;
            long right = value & mask;
            for (long key : keys) {
                long next = left ^ (CounterRandom.mix(right + key) & mask);
                left = right;
                right = next;
            }
            value = left << halfBits | right;
        } while (value >= n);
        return value;
    }
}
