"""The library's kernels in numpy: stops, pairs and Monte Carlo, exact, with masks.

Usage: numpy_rival.py check|time FOLDER, with the folder that the Java program Rivals wrote. Equations and symbols: the kernel's
StopKernel and GapKernel. The Monte Carlo draws from numpy's own generator, so that its draws differ; its statistics leave out the quantiles.
"""
import sys
import time
from pathlib import Path

import numpy as np

GRAZING_M = 1e-9
TIE_M = 1e-12


def column(folder, name):
    return np.fromfile(Path(folder) / (name + ".f64"), dtype="<f8")


def stops(v, onset, tr, a):
    quotient = v / a
    common = v >= 0.5 * a * tr
    braking = np.where(common, quotient + 0.5 * tr, np.sqrt(2 * quotient * tr))
    metres = np.where(common, 0.5 * v * (tr + quotient) - a * tr * tr / 24, v * braking * (2 / 3))
    return v * onset + metres, onset + braking


def rest_time(v, onset, tr, a):
    inside = v < 0.5 * a * tr
    return onset + np.where(inside, np.sqrt(2 * v * tr / a), v / a + 0.5 * tr)


def state(v, onset, tr, a, rest, t, middle):
    """Position, speed, deceleration and jerk at t, in the phase that holds at the middle of the interval."""
    building = (middle > onset) & (middle < onset + tr) & (middle < rest)
    braking = (middle >= onset + tr) & (middle < rest)
    resting = middle >= rest
    at = np.minimum(t, rest)
    tau = np.clip(at - onset, 0, tr)
    jerk = np.where(tr > 0, a / np.where(tr > 0, tr, 1), 0)
    full = np.maximum(at - onset - tr, 0)
    speed = v - 0.5 * jerk * tau**2 - a * full
    position = (v * np.minimum(at, onset + tau) - jerk * tau**3 / 6
                + (v - 0.5 * a * tr) * full - 0.5 * a * full**2)
    decel = np.where(building, jerk * tau, np.where(braking, a, 0))
    return position, np.where(resting, 0, speed), decel, np.where(building, jerk, 0)


def by_phases(leader, follower, gap):
    """Every pair interval by interval between the changes of either motion; the gap is a cubic in each."""
    n = gap.size
    ends = []
    rests = [rest_time(*leader), rest_time(*follower)]
    for (v, onset, tr, a), rest in zip((leader, follower), rests):
        ends += [np.minimum(onset, rest), np.minimum(onset + tr, rest), rest]
    changes = np.sort(np.stack([np.zeros(n), *ends]), axis=0)
    smallest, when, closing = gap.copy(), np.zeros(n), np.full(n, np.nan)
    alive = np.ones(n, bool)
    for start, end in zip(changes[:-1], changes[1:]):
        go = alive & (end > start)
        if not go.any():
            continue
        t0, length, g = start[go], (end - start)[go], gap[go]
        middle = t0 + 0.5 * length
        l = state(*[x[go] for x in leader], rests[0][go], t0, middle)
        f = state(*[x[go] for x in follower], rests[1][go], t0, middle)
        h0, h1, h2, h3 = g + l[0] - f[0], l[1] - f[1], f[2] - l[2], f[3] - l[3]

        def at(x, k=slice(None)):
            return h0[k] + x * (h1[k] + x * (0.5 * h2[k] + x * h3[k] / 6))

        square = h2 * h2 - 2 * h3 * h1
        q = -(h2 + np.copysign(np.sqrt(np.maximum(square, 0)), h2))
        roots = [np.where(h3 == 0, -h1 / h2, q / h3), np.where(h3 == 0, np.nan, 2 * h1 / q)]
        roots = [np.where((square > 0) & (r > 0) & (r < length), r, length) for r in roots]
        cuts = [np.zeros_like(length), np.minimum(*roots), np.maximum(*roots), length]
        values = [at(c) for c in cuts]
        index = np.flatnonzero(go)
        done = np.zeros(index.size, bool)
        lowest, moment = smallest[index], when[index]
        for k in range(3):
            for value, cut in ((values[k], cuts[k]), (values[k + 1], cuts[k + 1])):
                lower = ~done & (value < lowest)
                moment = np.where(lower & (value < lowest - TIE_M), t0 + cut, moment)
                lowest = np.where(lower, value, lowest)
            hit = np.flatnonzero(~done & (values[k + 1] < -GRAZING_M))
            if hit.size:
                above, below = cuts[k][hit].copy(), cuts[k + 1][hit].copy()
                x = above + (below - above) * values[k][hit] / (values[k][hit] - values[k + 1][hit])
                for _ in range(60):
                    h = at(x, hit)
                    above, below = np.where(h > 0, x, above), np.where(h > 0, below, x)
                    step = x - h / (h1[hit] + x * (h2[hit] + 0.5 * x * h3[hit]))
                    new = np.where((step > above) & (step < below), step, 0.5 * (above + below))
                    if np.all(np.abs(new - x) <= 2.3e-16 * (t0[hit] + x)):
                        break
                    x = new
                rate = h1[hit] + x * (h2[hit] + 0.5 * x * h3[hit])
                lowest[hit], moment[hit], closing[index[hit]] = 0, t0[hit] + x, np.maximum(0, -rate)
                done[hit] = True
        smallest[index], when[index] = lowest, moment
        alive[index[done]] = False
    return when, smallest, closing


def pairs(leader, follower, gap):
    """By the case theorem under masks, the rest by phases."""
    (lv, lo, lb, la), (fv, fo, fb, fa) = leader, follower
    holds = ((lo + lb <= fo) & (lv > 0) & (fv > 0) & (la > 0) & (fa > 0)
             & (lv >= 0.5 * la * lb) & (fv >= 0.5 * fa * fb))
    l_mid, f_mid, full_s = lo + 0.5 * lb, fo + 0.5 * fb, fo + fb
    l_stop, f_stop = l_mid + lv / la, f_mid + fv / fa
    l_shift, f_shift = la * lb * lb / 24, fa * fb * fb / 24
    final = gap + (lv * (l_mid + 0.5 * lv / la) - l_shift) - (fv * (f_mid + 0.5 * fv / fa) - f_shift)
    leader_first = holds & (l_stop <= f_stop)
    when = np.where(final < gap - TIE_M, f_stop, 0.0)
    smallest = np.minimum(final, gap)
    closing = np.full(gap.size, np.nan)
    touches = leader_first & (final < -GRAZING_M)
    contact = np.sqrt(np.where(touches, -2 * fa * final, 0))
    at = f_stop - contact / fa
    standing = touches & (at >= l_stop) & (at >= full_s)
    when, smallest, closing = (np.where(standing, at, when), np.where(standing, 0, smallest),
                               np.where(standing, contact, closing))
    k = np.flatnonzero(holds & ~(leader_first & ~touches) & ~standing)
    if k.size:
        fs, ls = f_stop[k], l_stop[k]
        braked, half = (full_s - l_mid)[k], 0.5 * fb[k]
        rate = lv[k] - la[k] * braked - (fv[k] - fa[k] * half)
        full = (gap[k] + (lv[k] - fv[k]) * full_s[k] - (0.5 * la[k] * braked**2 + l_shift[k])
                + (0.5 * fa[k] * half**2 + f_shift[k]))
        bend = fa[k] - la[k]
        closes = (full_s[k] < ls) & (rate < 0)
        least = full - rate * rate / (2 * bend)
        clear = closes & ~leader_first[k] & (least >= -GRAZING_M)
        when[k] = np.where(clear, np.where(least < gap[k] - TIE_M, full_s[k] - rate / bend, 0), when[k])
        smallest[k] = np.where(clear, np.minimum(least, gap[k]), smallest[k])
        root = np.sqrt(np.maximum(rate * rate - 2 * bend * full, 0))
        at = full_s[k] + 2 * full / (root - rate)
        moving = closes & ~clear & (full > 0) & (at < np.minimum(ls, fs))
        when[k], smallest[k] = np.where(moving, at, when[k]), np.where(moving, 0, smallest[k])
        closing[k] = np.where(moving, root, closing[k])
        k = k[~clear & ~moving]
    k = np.concatenate([k, np.flatnonzero(~holds)])
    if k.size:
        when[k], smallest[k], closing[k] = by_phases([x[k] for x in leader], [x[k] for x in follower], gap[k])
    return when, smallest, closing


def monte_carlo(draws, outcomes=pairs, chunk=65_536):
    rng = np.random.default_rng(13)
    contacts, closing_sum, gap_sum, squares = 0, 0.0, 0.0, 0.0
    bins = np.zeros(120)
    for _ in range(draws // chunk):
        reaction = rng.lognormal(0.17, 0.44, chunk)
        gap = rng.lognormal(0.69, 0.47, chunk) * 25
        decel = rng.normal(7, 1, chunk)
        while (outside := (decel < 2) | (decel > 10)).any():
            decel[outside] = rng.normal(7, 1, outside.sum())
        leader = [np.full(chunk, x) for x in (25.0, 0.1, 0.25, 7.0)]
        follower = [np.full(chunk, 25.0), 0.11 + reaction, np.full(chunk, 0.25), decel]
        _, smallest, closing = outcomes(leader, follower, gap)
        hit = closing[closing >= 0]
        contacts += hit.size
        closing_sum += hit.sum()
        squares += (hit * hit).sum()
        gap_sum += smallest.sum()
        bins += np.histogram(hit, 120, (0, 60))[0]
    return contacts / draws, closing_sum / contacts, gap_sum / draws


def timed(name, per_call, operation):
    rounds = []
    operation()
    for _ in range(7):
        start = time.thread_time()
        operation()
        rounds.append((time.thread_time() - start) / per_call * 1e9)
    print(f"{name}\t{sorted(rounds)[3]:.4f}")


def main(what, folder):
    stop = [column(folder, "stop_" + c) for c in ("speed_mps", "onset_s", "build_up_s", "decel_mps2")]
    vehicles = [[column(folder, f"pair_{who}_{c}") for c in ("speed_mps", "onset_s", "build_up_s", "decel_mps2")]
                for who in ("leader", "follower")]
    gap = column(folder, "pair_gap_m")
    if what == "time":
        timed("stop batch both", gap.size, lambda: [stops(*stop) for _ in range(gap.size // stop[0].size)])
        timed("pair batch", gap.size, lambda: pairs(*vehicles, gap))
        timed("pair phases", gap.size, lambda: by_phases(*vehicles, gap))
        timed("monte carlo", 1 << 20, lambda: monte_carlo(1 << 20))
        timed("monte carlo by phases", 1 << 18, lambda: monte_carlo(1 << 18, by_phases))
        return 0
    good = True

    def report(text, worst, allowed):
        nonlocal good
        good &= bool(worst <= allowed)
        print(f"{text:<52} {worst:10.3g}  at most {allowed:7.1g}  {'ok' if worst <= allowed else 'FAILS'}")

    for mine, name in zip(stops(*stop), ("stop_distance_m", "stop_time_s")):
        report("numpy " + name, np.abs(mine - column(folder, name)).max(), 1e-11)
    for text, outcome in (("numpy pairs by cases", pairs(*vehicles, gap)), ("numpy pairs by phases", by_phases(*vehicles, gap))):
        theirs = column(folder, "pair_closing_mps")
        hit = theirs >= 0
        report(text + ", wrong outcomes", np.sum((outcome[2] >= 0) != hit), 0)
        report(text + ", closing speed m/s", np.abs(outcome[2] - theirs)[hit].max(), 1e-11)
        report(text + ", smallest gap m", np.abs(outcome[1] - column(folder, "pair_smallest_gap_m")).max(), 1e-11)
        report(text + ", time s", np.abs(outcome[0] - column(folder, "pair_time_s")).max(), 1e-9)
    draws, hits, closing, smallest = column(folder, "monte_carlo")
    p, mean, _ = monte_carlo(1 << 20)
    # other draws: five standard errors
    report("numpy Monte Carlo, contact probability", abs(p - hits / draws), 5 * (p * (1 - p) / (1 << 20)) ** 0.5)
    report("numpy Monte Carlo, mean closing speed m/s", abs(mean - closing), 0.1)
    return 0 if good else 1


if __name__ == "__main__":
    if len(sys.argv) != 3 or sys.argv[1] not in ("check", "time"):
        sys.exit("usage: numpy_rival.py check|time FOLDER")
    np.seterr(all="ignore")
    sys.exit(main(sys.argv[1], sys.argv[2]))
