package io.github.stoplag.following;

import io.github.stoplag.kernel.ImpactKernel;
import io.github.stoplag.quantity.Check;
import io.github.stoplag.quantity.Mass;
import io.github.stoplag.quantity.Numbers;
import io.github.stoplag.quantity.Speed;
import io.github.stoplag.source.Catalogue;
import io.github.stoplag.source.Caution;
import io.github.stoplag.source.PublishedRange;
import java.util.List;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;

/**
 * What a rear-end contact does to both vehicles: momentum with a restitution.
 *
 * <pre>
 *   Δv_L = m_F/(m_L + m_F) · (1 + e) c      Δv_F = m_L/(m_L + m_F) · (1 + e) c      m_L Δv_L = m_F Δv_F
 * </pre>
 *
 * <p>c closing speed [m/s], e restitution in [0, 1], m masses [kg], Δv changes of speed [m/s]: the leader gains, the
 * follower loses. A central impact along the lane, tyre forces left out during the impact, no override or underride.
 * The motion after it is not modelled.
 *
 * <p>Source: see {@link ImpactKernel}; published restitutions in {@link #published()}.
 *
 * @param leaderMass the leader's mass
 * @param leader the leader's speed before
 * @param followerMass the follower's mass
 * @param follower the follower's speed before, not below the leader's
 * @param restitutionRatio the restitution e
 */
public record Impact(Mass leaderMass, Speed leader, Mass followerMass, Speed follower, double restitutionRatio) {
    private static final Catalogue<PublishedRange> PUBLISHED =
            Catalogue.readRanges("restitution", Impact.class, "restitutions.csv");

    /** Why there is no injury-risk curve in here. */
    public static final Caution INJURY = new Caution(
            "injury risk",
            "No injury-risk curve is supplied: published curves hold for the occupants, belts, vehicles and crash"
                    + " types they were fitted to, and carry wide uncertainty. Take one from its own publication, say"
                    + " which, and never read a calculated risk as a prediction for a person.");

    /**
     * Checks the speeds and the restitution.
     *
     * @param leaderMass the leader's mass
     * @param leader the leader's speed before
     * @param followerMass the follower's mass
     * @param follower the follower's speed before, not below the leader's
     * @param restitutionRatio the restitution e
     * @throws IllegalArgumentException if the follower is slower than the leader or the restitution is not in [0, 1]
     */
    public Impact {
        Objects.requireNonNull(follower, "follower");
        Objects.requireNonNull(leader, "leader");
        Objects.requireNonNull(followerMass, "followerMass");
        Objects.requireNonNull(leaderMass, "leaderMass");
        if (follower.compareTo(leader) < 0) {
            throw new IllegalArgumentException(
                    "follower speed must not be below the leader's in a rear-end contact, got" + " follower " + follower
                            + " and leader " + leader);
        }
        Check.inRange("restitution", restitutionRatio, 0, 1, "");
    }

    /**
     * Takes the speeds from a contact and the restitution from the caller's curve.
     *
     * @param contact the contact
     * @param leaderMass the leader's mass
     * @param followerMass the follower's mass
     * @param restitutionOfClosingMps the restitution as a function of the closing speed in m/s
     * @return the impact
     * @throws IllegalArgumentException if the curve gives a value outside [0, 1]
     */
    public static Impact of(
            PairOutcome.Contact contact,
            Mass leaderMass,
            Mass followerMass,
            DoubleUnaryOperator restitutionOfClosingMps) {
        Objects.requireNonNull(restitutionOfClosingMps, "restitutionOfClosingMps");
        Objects.requireNonNull(followerMass, "followerMass");
        Objects.requireNonNull(leaderMass, "leaderMass");
        return new Impact(
                leaderMass,
                contact.leaderSpeed(),
                followerMass,
                contact.followerSpeed(),
                restitutionOfClosingMps.applyAsDouble(contact.closingSpeed().inMps()));
    }

    /**
     * Takes the speeds from a contact.
     *
     * @param contact the contact
     * @param leaderMass the leader's mass
     * @param followerMass the follower's mass
     * @param restitutionRatio the restitution e, in [0, 1]; 0 for vehicles that go on together
     * @return the impact
     * @throws IllegalArgumentException if the restitution is not in [0, 1]
     */
    public static Impact of(PairOutcome.Contact contact, Mass leaderMass, Mass followerMass, double restitutionRatio) {
        Objects.requireNonNull(followerMass, "followerMass");
        Objects.requireNonNull(leaderMass, "leaderMass");
        return of(contact, leaderMass, followerMass, closingMps -> restitutionRatio);
    }

    /**
     * Lists published restitutions of vehicles.
     *
     * @return the rows of the table in order
     */
    public static List<PublishedRange> published() {
        return PUBLISHED.list();
    }

    /**
     * Finds a published restitution of vehicles.
     *
     * @param id the name of the row
     * @return the restitution
     * @throws IllegalArgumentException if no row has this name; the message offers the nearest
     */
    public static PublishedRange published(String id) {
        Objects.requireNonNull(id, "id");
        return PUBLISHED.get(id);
    }

    /**
     * Gives the speed the leader gains.
     *
     * @return Δv_L
     */
    public Speed leaderChange() {
        return Speed.mps(impulseNs() / leaderMass.inKg());
    }

    /**
     * Gives the speed the follower loses.
     *
     * @return Δv_F; larger than its speed if it rebounds backwards
     */
    public Speed followerChange() {
        return Speed.mps(impulseNs() / followerMass.inKg());
    }

    /**
     * Gives the leader's speed after the impact.
     *
     * @return v_L + Δv_L
     */
    public Speed leaderAfter() {
        return Speed.mps(ImpactKernel.leaderAfterMps(
                leaderMass.inKg(), leader.inMps(), followerMass.inKg(), follower.inMps(), restitutionRatio));
    }

    /**
     * Gives the follower's velocity after the impact.
     *
     * @return v_F − Δv_F in m/s, negative if it rebounds backwards
     */
    public double followerAfterMps() {
        return ImpactKernel.followerAfterMps(
                leaderMass.inKg(), leader.inMps(), followerMass.inKg(), follower.inMps(), restitutionRatio);
    }

    /**
     * Gives the impulse handed over.
     *
     * @return J in N s
     */
    public double impulseNs() {
        return ImpactKernel.impulseNs(
                leaderMass.inKg(), leader.inMps(), followerMass.inKg(), follower.inMps(), restitutionRatio);
    }

    /**
     * Gives the kinetic energy turned into deformation and heat.
     *
     * @return ΔE in J
     */
    public double energyLostJ() {
        return ImpactKernel.energyLostJ(
                leaderMass.inKg(), leader.inMps(), followerMass.inKg(), follower.inMps(), restitutionRatio);
    }

    /**
     * Applies the caller's injury-risk curve to the leader's change of speed; see {@link #INJURY}.
     *
     * @param riskOfChangeMps the probability as a function of the change of speed in m/s
     * @return the probability
     * @throws IllegalArgumentException if the curve gives a value outside [0, 1]
     */
    public double leaderRiskRatio(DoubleUnaryOperator riskOfChangeMps) {
        Objects.requireNonNull(riskOfChangeMps, "riskOfChangeMps");
        return risk(riskOfChangeMps, leaderChange());
    }

    /**
     * Applies the caller's injury-risk curve to the follower's change of speed; see {@link #INJURY}.
     *
     * @param riskOfChangeMps the probability as a function of the change of speed in m/s
     * @return the probability
     * @throws IllegalArgumentException if the curve gives a value outside [0, 1]
     */
    public double followerRiskRatio(DoubleUnaryOperator riskOfChangeMps) {
        Objects.requireNonNull(riskOfChangeMps, "riskOfChangeMps");
        return risk(riskOfChangeMps, followerChange());
    }

    private static double risk(DoubleUnaryOperator riskOfChangeMps, Speed change) {
        String name = "injury risk at a change of speed of " + Numbers.text(change.inMps()) + " m/s";
        return Check.inRange(name, riskOfChangeMps.applyAsDouble(change.inMps()), 0, 1, "");
    }
}
