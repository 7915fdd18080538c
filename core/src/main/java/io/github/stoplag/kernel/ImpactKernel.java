package io.github.stoplag.kernel;

/**
 * A central impact of two bodies on one line, in SI doubles with signed velocities.
 *
 * <pre>
 *   J = m_L m_F / (m_L + m_F) · (1 + e) (v_F − v_L)
 *   v_L′ = v_L + J / m_L      v_F′ = v_F − J / m_F      ΔE = m_L m_F / (m_L + m_F) · (1 − e²) (v_F − v_L)² / 2
 * </pre>
 *
 * <p>m_L, m_F masses of leader and follower [kg]; v velocities before, v′ after, positive in the direction of travel
 * [m/s]; e restitution, 0 for bodies that go on together, 1 for no energy lost; J impulse [N s]; ΔE energy lost [J].
 * Arguments are not checked, masses are taken to be above 0 and the follower not slower than the leader; NaN in gives
 * NaN out. Forces from outside, such as braking, are left out during the impact.
 *
 * <p>Source: conservation of momentum and the definition of restitution.
 */
public final class ImpactKernel {
    private ImpactKernel() {}

    /**
     * Gives the impulse that the follower hands to the leader.
     *
     * @param leaderKg the leader's mass in kg
     * @param leaderMps the leader's velocity before in m/s
     * @param followerKg the follower's mass in kg
     * @param followerMps the follower's velocity before in m/s
     * @param restitutionRatio the restitution e
     * @return J in N s
     */
    public static double impulseNs(
            double leaderKg, double leaderMps, double followerKg, double followerMps, double restitutionRatio) {
        return reducedKg(leaderKg, followerKg) * (1 + restitutionRatio) * (followerMps - leaderMps);
    }

    /**
     * Gives the leader's velocity after the impact.
     *
     * @param leaderKg the leader's mass in kg
     * @param leaderMps the leader's velocity before in m/s
     * @param followerKg the follower's mass in kg
     * @param followerMps the follower's velocity before in m/s
     * @param restitutionRatio the restitution e
     * @return v_L′ in m/s
     */
    public static double leaderAfterMps(
            double leaderKg, double leaderMps, double followerKg, double followerMps, double restitutionRatio) {
        double share = followerKg / (leaderKg + followerKg);
        return leaderMps + share * (1 + restitutionRatio) * (followerMps - leaderMps);
    }

    /**
     * Gives the follower's velocity after the impact.
     *
     * @param leaderKg the leader's mass in kg
     * @param leaderMps the leader's velocity before in m/s
     * @param followerKg the follower's mass in kg
     * @param followerMps the follower's velocity before in m/s
     * @param restitutionRatio the restitution e
     * @return v_F′ in m/s, negative if it rebounds backwards
     */
    public static double followerAfterMps(
            double leaderKg, double leaderMps, double followerKg, double followerMps, double restitutionRatio) {
        double share = leaderKg / (leaderKg + followerKg);
        return followerMps - share * (1 + restitutionRatio) * (followerMps - leaderMps);
    }

    /**
     * Gives the kinetic energy that the impact turns into deformation and heat.
     *
     * @param leaderKg the leader's mass in kg
     * @param leaderMps the leader's velocity before in m/s
     * @param followerKg the follower's mass in kg
     * @param followerMps the follower's velocity before in m/s
     * @param restitutionRatio the restitution e
     * @return ΔE in J
     */
    public static double energyLostJ(
            double leaderKg, double leaderMps, double followerKg, double followerMps, double restitutionRatio) {
        double closingMps = followerMps - leaderMps;
        return 0.5
                * reducedKg(leaderKg, followerKg)
                * (1 - restitutionRatio * restitutionRatio)
                * closingMps
                * closingMps;
    }

    private static double reducedKg(double leaderKg, double followerKg) {
        return leaderKg / (leaderKg + followerKg) * followerKg;
    }
}
