package io.github.stoplag.kernel;

import org.jspecify.annotations.Nullable;

/**
 * A reusable buffer for the outcome of one pair of vehicles; {@link GapKernel} fills it.
 *
 * <p>Either there is no contact: {@link #smallestGapM()} is the smallest gap and {@link #timeS()} when it is first
 * reached. Or there is contact: {@link #timeS()} is the moment of contact, {@link #smallestGapM()} is 0 and the speeds
 * are those just before the contact. Not for sharing between threads.
 */
public final class GapEvent {
    /** A leader no faster than this in m/s stands: rounding leaves some 1e-15 of a speed. */
    static final double STANDING_MPS = 1e-9;

    boolean contact;
    double timeS;
    double smallestGapM;
    double leaderSpeedMps;
    double followerSpeedMps;
    boolean leaderStanding;

    // scratch of the scan over phases: see RelativeMotion
    double contactDepthM;
    double crossedAtS;

    private @Nullable Phases leaderScratch;
    private @Nullable Phases followerScratch;

    /** Makes an empty buffer. */
    public GapEvent() {
        clear(GapKernel.GRAZING_M);
    }

    void clear(double newContactDepthM) {
        contact = false;
        timeS = 0;
        smallestGapM = Double.POSITIVE_INFINITY;
        leaderSpeedMps = Double.NaN;
        followerSpeedMps = Double.NaN;
        leaderStanding = false;
        contactDepthM = newContactDepthM;
        crossedAtS = Double.NaN;
    }

    void setNoContact(double atS, double gapM) {
        clear(GapKernel.GRAZING_M);
        timeS = atS;
        smallestGapM = gapM;
    }

    void setContact(double atS, double leaderMps, double followerMps, boolean standing) {
        contact = true;
        timeS = atS;
        smallestGapM = 0;
        // one tolerance for all ways of finding a contact: what is left of a speed by rounding is none
        leaderStanding = standing || leaderMps <= STANDING_MPS;
        leaderSpeedMps = leaderStanding ? 0 : leaderMps;
        followerSpeedMps = followerMps;
    }

    // made when the general path first needs them, so that the fast path stays free of allocation from the first call
    // on
    Phases leaderScratch() {
        Phases scratch = leaderScratch;
        if (scratch == null) {
            scratch = new Phases(4);
            leaderScratch = scratch;
        }
        return scratch;
    }

    Phases followerScratch() {
        Phases scratch = followerScratch;
        if (scratch == null) {
            scratch = new Phases(4);
            followerScratch = scratch;
        }
        return scratch;
    }

    /**
     * Says whether the follower runs into the leader.
     *
     * @return true on contact
     */
    public boolean contact() {
        return contact;
    }

    /**
     * Says whether the two just touch without pushing: no contact, smallest gap within {@link GapKernel#GRAZING_M} of
     * 0.
     *
     * @return true if they graze
     */
    public boolean grazing() {
        return !contact && smallestGapM <= GapKernel.GRAZING_M;
    }

    /**
     * Gives the moment of contact, or else the first moment of the smallest gap.
     *
     * @return the time in s; positive infinity if the gap closes for ever without a limit it reaches
     */
    public double timeS() {
        return timeS;
    }

    /**
     * Gives the smallest gap.
     *
     * @return the gap in m, 0 on contact
     */
    public double smallestGapM() {
        return smallestGapM;
    }

    /**
     * Gives the follower's speed less the leader's at contact.
     *
     * @return the closing speed in m/s, NaN without contact
     */
    public double closingSpeedMps() {
        return Math.max(0, followerSpeedMps - leaderSpeedMps);
    }

    /**
     * Gives the leader's speed at contact.
     *
     * @return the speed in m/s, NaN without contact
     */
    public double leaderSpeedMps() {
        return leaderSpeedMps;
    }

    /**
     * Gives the follower's speed at contact.
     *
     * @return the speed in m/s, NaN without contact
     */
    public double followerSpeedMps() {
        return followerSpeedMps;
    }

    /**
     * Says whether the leader had come to rest by the contact.
     *
     * @return true if it stood; false while it moved and without contact
     */
    public boolean leaderStanding() {
        return leaderStanding;
    }
}
