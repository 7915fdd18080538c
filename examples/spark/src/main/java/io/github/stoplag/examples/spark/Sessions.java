package io.github.stoplag.examples.spark;

import org.apache.spark.SparkConf;
import org.apache.spark.sql.SparkSession;

/** How a session is opened. */
final class Sessions {
    private static final String MASTER = "spark.master";
    private static final String LOOPBACK = "127.0.0.1";

    private Sessions() {}

    /** Opens what spark-submit asks for, or without it a session in this process on all cores. */
    static SparkSession open() {
        SparkConf given = new SparkConf();
        return given.contains(MASTER)
                ? SparkSession.builder().config(given).getOrCreate()
                : local(Runtime.getRuntime().availableProcessors());
    }

    /** Opens a session in this process that nothing outside it can reach. */
    static SparkSession local(int threads) {
        return SparkSession.builder()
                .appName("stoplag sweep")
                .master("local[" + threads + "]")
                .config("spark.driver.host", LOOPBACK)
                .config("spark.driver.bindAddress", LOOPBACK)
                .config("spark.ui.enabled", false)
                .getOrCreate();
    }
}
