package io.github.stoplag.sweep;

import io.github.stoplag.chance.Distribution;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * The SHA-256 of all that decides a plan's values: numbers and names, no text of numbers, which is not the same on
 * every JDK.
 */
final class PlanDigest {
    private final MessageDigest sha;

    private PlanDigest() {
        try {
            sha = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    static byte[] of(Plan plan) {
        PlanDigest digest = new PlanDigest();
        digest.add(plan.design().kind().name());
        digest.add(plan.design().count());
        digest.add(plan.seed());
        digest.add(plan.exactQuantiles() ? 1 : 0);
        digest.add(plan.axes().size());
        plan.axes().forEach(digest::add);
        digest.add(plan.correlations().size());
        for (Plan.Correlation pair : plan.correlations()) {
            digest.add(pair.first());
            digest.add(pair.second());
            digest.addAll(pair.rho());
        }
        return digest.sha.digest();
    }

    /** The digest of bytes as hexadecimal text. */
    static String of(byte[] bytes) {
        return HexFormat.of().formatHex(new PlanDigest().sha.digest(bytes));
    }

    private void add(Axis axis) {
        add(axis.column());
        addAll(axis.levels());
        axis.distribution().map(Distribution::canonical).ifPresent(this::add);
    }

    private void addAll(double... values) {
        add(values.length);
        for (double value : values) {
            add(Double.doubleToLongBits(value));
        }
    }

    private void add(long number) {
        sha.update(ByteBuffer.allocate(Long.BYTES).putLong(number).array());
    }

    private void add(String text) {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        add(bytes.length);
        sha.update(bytes);
    }
}
