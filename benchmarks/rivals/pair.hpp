// The outcome of a pair of standard stops: the library's mathematics written in C++, one pair at a time and four at a time.
// Equations, symbols and range: the kernel's GapKernel. Names end in their unit.
#pragma once
#include <immintrin.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace pair {

constexpr double GRAZING_M = 1e-9;
constexpr double TIE_M = 1e-12;
constexpr double NONE = std::numeric_limits<double>::quiet_NaN();
constexpr double FOR_EVER = std::numeric_limits<double>::infinity();

struct Stop {
    double mps, onsetS, buildUpS, mps2;
};

struct Outcome {
    double timeS, smallestM, closingMps;
};

// ---- by phases of constant jerk: the search that settles every pair ----

struct Phases {
    double startS[5], positionM[5], mps[5], mps2[5], jerk[5];
    int count = 0;
    double endS = 0, endM = 0, endMps = 0, restS = FOR_EVER;

    explicit Phases(const Stop& stop) : endMps(stop.mps) {
        if (stop.mps2 > 0) {
            append(0, 0, stop.onsetS);
            if (stop.buildUpS > 0) {
                append(0, stop.mps2 / stop.buildUpS, stop.buildUpS);
            }
            append(stop.mps2, 0, FOR_EVER);
        } else {
            append(0, 0, FOR_EVER);
        }
    }

    void append(double decel, double j, double durationS) {
        if (!(durationS > 0) || restS < FOR_EVER) {
            return;
        }
        double tau = timeToRest(endMps, decel, j);
        if (tau > 0) {
            store(decel, j);
        }
        if (tau <= durationS) {
            advance(decel, j, tau);
            rest();
        } else if (durationS < FOR_EVER) {
            advance(decel, j, durationS);
            if (endMps <= 0) {
                rest();
            }
        }
    }

    void rest() {
        restS = endS;
        endMps = 0;
        store(0, 0);
    }

    void store(double decel, double j) {
        startS[count] = endS;
        positionM[count] = endM;
        mps[count] = endMps;
        mps2[count] = decel;
        jerk[count] = j;
        count++;
    }

    void advance(double decel, double j, double tau) {
        endM += tau * (endMps - tau * (0.5 * decel + tau * j / 6));
        endMps -= tau * (decel + 0.5 * tau * j);
        endS += tau;
    }

    static double timeToRest(double speed, double decel, double j) {
        if (speed <= 0 && (decel > 0 || (decel == 0 && j >= 0))) {
            return 0;
        }
        if (j == 0) {
            return decel > 0 ? speed / decel : FOR_EVER;
        }
        double square = decel * decel + 2 * j * speed;
        if (square < 0) {
            return FOR_EVER;
        }
        double root = std::sqrt(square);
        double tau = decel >= 0 ? 2 * speed / (decel + root) : (root - decel) / j;
        return tau > 0 ? tau : FOR_EVER;
    }

    double positionAt(int i, double t) const {
        double tau = t - startS[i];
        return positionM[i] + tau * (mps[i] - tau * (0.5 * mps2[i] + tau * jerk[i] / 6));
    }

    double speedAt(int i, double t) const {
        double tau = t - startS[i];
        return mps[i] - tau * (mps2[i] + 0.5 * tau * jerk[i]);
    }
};

// the gap over one interval, h0 + h1 tau + h2 tau^2/2 + h3 tau^3/6, cut at its extrema
struct Cubic {
    double startS, h0, h1, h2, h3;

    double at(double tau) const { return h0 + tau * (h1 + tau * (0.5 * h2 + tau * h3 / 6)); }

    double fallingRoot() const {
        double root = std::sqrt(std::max(0.0, h1 * h1 - 2 * h2 * h0));
        return h1 <= 0 ? 2 * h0 / (root - h1) : -(h1 + root) / h2;
    }

    double bracketedRoot(double above, double from, double below, double to) const {
        double tau = above + (below - above) * from / (from - to);
        for (int step = 0; step < 100; step++) {
            double h = at(tau);
            (h > 0 ? above : below) = tau;
            double next = tau - h / (h1 + tau * (h2 + 0.5 * tau * h3));
            if (!(next > above && next < below)) {
                next = 0.5 * (above + below);
            }
            if (std::fabs(next - tau) <= 2.3e-16 * (startS + tau)) {
                return next;
            }
            tau = next;
        }
        return tau;
    }
};

struct Scan {
    double smallestM, timeS = 0, crossedS = NONE;

    void note(double gapM, double atS) {
        if (gapM < smallestM) {
            if (gapM < smallestM - TIE_M) {
                timeS = atS;
            }
            smallestM = gapM;
        }
    }

    bool piece(const Cubic& c, double fromS, double from, double toS, double to) {
        note(to, c.startS + toS);
        if (to > 0) {
            crossedS = NONE;
            return false;
        }
        if (from > 0) {
            double tau = c.h3 == 0 ? c.fallingRoot() : c.bracketedRoot(fromS, from, toS, to);
            crossedS = c.startS + std::min(std::max(tau, fromS), toS);
        } else if (to < from && std::isnan(crossedS)) {
            crossedS = c.startS + fromS;
        }
        return to < -GRAZING_M;
    }

    bool closes(const Cubic& c, double lengthS) {
        double first = NONE, second = NONE;
        if (c.h3 == 0) {
            first = -c.h1 / c.h2;
        } else {
            double square = c.h2 * c.h2 - 2 * c.h3 * c.h1;
            if (square > 0) {
                double q = -(c.h2 + std::copysign(std::sqrt(square), c.h2));
                first = std::min(q / c.h3, 2 * c.h1 / q);
                second = std::max(q / c.h3, 2 * c.h1 / q);
            }
        }
        note(c.h0, c.startS);
        double fromS = 0, from = c.h0;
        for (double extremum : {first, second}) {
            if (extremum > 0 && extremum < lengthS) {
                double to = c.at(extremum);
                if (piece(c, fromS, from, extremum, to)) {
                    return true;
                }
                fromS = extremum;
                from = to;
            }
        }
        double slope = c.h2 != 0 ? c.h2 : c.h1;
        double end = lengthS < FOR_EVER ? c.at(lengthS) : slope == 0 ? from : std::copysign(FOR_EVER, slope);
        return piece(c, fromS, from, lengthS, end);
    }
};

__attribute__((noinline)) inline Outcome byPhases(const Stop& leaderStop, const Stop& followerStop, double gapM) {
    Phases leader(leaderStop), follower(followerStop);
    Scan scan{gapM};
    int i = 0, j = 0;
    double startS = 0;
    while (true) {
        double leaderEndS = i + 1 < leader.count ? leader.startS[i + 1] : FOR_EVER;
        double followerEndS = j + 1 < follower.count ? follower.startS[j + 1] : FOR_EVER;
        double endS = std::min(leaderEndS, followerEndS);
        Cubic c{startS,
                gapM + (leader.positionAt(i, startS) - follower.positionAt(j, startS)),
                leader.speedAt(i, startS) - follower.speedAt(j, startS),
                follower.mps2[j] + (startS - follower.startS[j]) * follower.jerk[j] -
                        (leader.mps2[i] + (startS - leader.startS[i]) * leader.jerk[i]),
                follower.jerk[j] - leader.jerk[i]};
        if (scan.closes(c, endS - startS)) {
            double atS = scan.crossedS;
            while (i > 0 && atS < leader.startS[i]) {
                i--;
            }
            while (j > 0 && atS < follower.startS[j]) {
                j--;
            }
            double closing = std::max(0.0, follower.speedAt(j, atS)) - std::max(0.0, leader.speedAt(i, atS));
            return {atS, 0, std::max(0.0, closing)};
        }
        if (endS == FOR_EVER) {
            return {scan.timeS, scan.smallestM, NONE};
        }
        startS = endS;
        i += leaderEndS <= endS;
        j += followerEndS <= endS;
    }
}

// ---- one pair by the case theorem ----

inline Outcome outcome(const Stop& l, const Stop& f, double gapM) {
    double leaderFullS = l.onsetS + l.buildUpS;
    if (!(l.mps > 0 && l.onsetS >= 0 && l.buildUpS >= 0 && l.mps2 > 0 && f.mps > 0 && f.buildUpS >= 0 && f.mps2 > 0 &&
          leaderFullS <= f.onsetS && l.mps >= 0.5 * l.mps2 * l.buildUpS && f.mps >= 0.5 * f.mps2 * f.buildUpS)) {
        return byPhases(l, f, gapM);
    }
    double leaderMidS = l.onsetS + 0.5 * l.buildUpS, followerMidS = f.onsetS + 0.5 * f.buildUpS;
    double leaderStopS = leaderMidS + l.mps / l.mps2, followerStopS = followerMidS + f.mps / f.mps2;
    double leaderShiftM = l.mps2 * l.buildUpS * l.buildUpS * (1.0 / 24);
    double followerShiftM = f.mps2 * f.buildUpS * f.buildUpS * (1.0 / 24);
    double fullS = f.onsetS + f.buildUpS;
    if (leaderStopS <= followerStopS) {
        double finalM = gapM + (l.mps * (leaderMidS + 0.5 * l.mps / l.mps2) - leaderShiftM) -
                        (f.mps * (followerMidS + 0.5 * f.mps / f.mps2) - followerShiftM);
        if (finalM >= -GRAZING_M) {
            return {finalM < gapM - TIE_M ? followerStopS : 0, std::min(finalM, gapM), NONE};
        }
        double closing = std::sqrt(-2 * f.mps2 * finalM);
        double atS = followerStopS - closing / f.mps2;
        if (atS >= leaderStopS && atS >= fullS) {
            return {atS, 0, closing};
        }
    }
    double brakedS = fullS - leaderMidS, halfS = 0.5 * f.buildUpS;
    double rate = l.mps - l.mps2 * brakedS - (f.mps - f.mps2 * halfS);
    double fullM = gapM + (l.mps - f.mps) * fullS - (0.5 * l.mps2 * brakedS * brakedS + leaderShiftM) +
                   (0.5 * f.mps2 * halfS * halfS + followerShiftM);
    if (fullS < leaderStopS && rate < 0) {
        double bend = f.mps2 - l.mps2;
        if (leaderStopS > followerStopS) {
            double smallestM = fullM - rate * rate / (2 * bend);
            if (smallestM >= -GRAZING_M) {
                return {smallestM < gapM - TIE_M ? fullS - rate / bend : 0, std::min(smallestM, gapM), NONE};
            }
        }
        double closing = std::sqrt(rate * rate - 2 * bend * fullM);
        double afterS = 2 * fullM / (closing - rate);
        if (fullM > 0 && fullS + afterS < std::min(leaderStopS, followerStopS)) {
            return {fullS + afterS, 0, std::max(0.0, closing)};
        }
    }
    // between the leader's full braking and the follower's onset
    double toFullS = leaderFullS - leaderMidS;
    double leaderFullM = gapM + (l.mps - f.mps) * leaderFullS - (0.5 * l.mps2 * toFullS * toFullS + leaderShiftM);
    double leaderRate = l.mps - l.mps2 * toFullS - f.mps;
    double leftS = f.onsetS - leaderFullS;
    double onsetM = leaderFullM + leftS * (leaderRate - 0.5 * l.mps2 * leftS);
    if (!(gapM > 0 && leaderFullM > 0 && f.onsetS <= leaderStopS && onsetM < -GRAZING_M)) {
        return byPhases(l, f, gapM);
    }
    double root = std::sqrt(leaderRate * leaderRate + 2 * l.mps2 * leaderFullM);
    double afterS = leaderRate <= 0 ? 2 * leaderFullM / (root - leaderRate) : (leaderRate + root) / l.mps2;
    return {leaderFullS + afterS, 0, f.mps - std::max(0.0, f.mps - root)};
}

// ---- four pairs by the case theorem ----

typedef double v4 __attribute__((vector_size(32)));
typedef long long m4 __attribute__((vector_size(32)));

inline v4 all(double x) { return v4{x, x, x, x}; }
inline v4 load(const double* x) { return (v4)_mm256_loadu_pd(x); }
inline void store(double* to, v4 x) { _mm256_storeu_pd(to, (__m256d)x); }
inline v4 root(v4 x) { return (v4)_mm256_sqrt_pd((__m256d)x); }
inline int lanes(m4 mask) { return _mm256_movemask_pd((__m256d)mask); }
inline v4 least(v4 x, v4 y) { return x < y ? x : y; }

struct Stop4 {
    v4 mps, onsetS, buildUpS, mps2;

    Stop lane(int k) const { return {mps[k], onsetS[k], buildUpS[k], mps2[k]}; }
};

// terms of one vehicle; where a vehicle is the same in a whole loop the compiler keeps them
struct Terms4 {
    v4 midS, stopS, shiftM, fullS, stopM;
    m4 brakes;

    explicit Terms4(const Stop4& s) {
        v4 brakingS = s.mps / s.mps2;
        midS = s.onsetS + 0.5 * s.buildUpS;
        stopS = midS + brakingS;
        shiftM = s.mps2 * s.buildUpS * s.buildUpS * (1.0 / 24);
        fullS = s.onsetS + s.buildUpS;
        stopM = s.mps * (midS + 0.5 * brakingS) - shiftM;
        brakes = (s.mps > 0.0) & (s.onsetS >= 0.0) & (s.buildUpS >= 0.0) & (s.mps2 > 0.0) &
                 (s.mps >= 0.5 * s.mps2 * s.buildUpS);
    }
};

inline __attribute__((always_inline)) void outcomes4(
        const Stop4& l, const Terms4& lt, const Stop4& f, const Terms4& ft, v4 gapM, double* timeS, double* smallestM,
        double* closingMps) {
    const v4 none = all(NONE);
    m4 holds = lt.brakes & ft.brakes & (lt.fullS <= f.onsetS);
    m4 leaderFirst = lt.stopS <= ft.stopS;
    v4 finalM = gapM + lt.stopM - ft.stopM;
    m4 touches = finalM < -GRAZING_M;
    v4 time = finalM < gapM - TIE_M ? ft.stopS : all(0);
    v4 smallest = least(finalM, gapM);
    v4 closing = none;
    m4 open = ~holds | ~leaderFirst;
    m4 standing = holds & leaderFirst & touches;
    if (lanes(standing)) {
        v4 contactMps = root(-2 * f.mps2 * finalM);
        v4 atS = ft.stopS - contactMps / f.mps2;
        m4 here = standing & (atS >= lt.stopS) & (atS >= ft.fullS);
        time = here ? atS : time;
        smallest = here ? all(0) : smallest;
        closing = here ? contactMps : closing;
        open |= standing & ~here;
    }
    if (lanes(open)) {
        v4 brakedS = ft.fullS - lt.midS, halfS = 0.5 * f.buildUpS;
        v4 rate = l.mps - l.mps2 * brakedS - (f.mps - f.mps2 * halfS);
        v4 fullM = gapM + (l.mps - f.mps) * ft.fullS - (0.5 * l.mps2 * brakedS * brakedS + lt.shiftM) +
                   (0.5 * f.mps2 * halfS * halfS + ft.shiftM);
        v4 bend = f.mps2 - l.mps2;
        m4 closes = holds & open & (ft.fullS < lt.stopS) & (rate < 0.0);
        v4 smallestM = fullM - rate * rate / (2 * bend);
        m4 clear = closes & ~leaderFirst & (smallestM >= -GRAZING_M);
        time = clear ? (smallestM < gapM - TIE_M ? ft.fullS - rate / bend : all(0)) : time;
        smallest = clear ? least(smallestM, gapM) : smallest;
        open &= ~clear;
        if (lanes(open)) {
            v4 contactMps = root(rate * rate - 2 * bend * fullM);
            v4 atS = ft.fullS + 2 * fullM / (contactMps - rate);
            m4 here = closes & open & (fullM > 0.0) & (atS < least(lt.stopS, ft.stopS));
            time = here ? atS : time;
            smallest = here ? all(0) : smallest;
            closing = here ? contactMps : closing;
            open &= ~here;
        }
        if (lanes(open)) {
            v4 toFullS = lt.fullS - lt.midS;
            v4 leaderFullM = gapM + (l.mps - f.mps) * lt.fullS - (0.5 * l.mps2 * toFullS * toFullS + lt.shiftM);
            v4 leaderRate = l.mps - l.mps2 * toFullS - f.mps;
            v4 leftS = f.onsetS - lt.fullS;
            v4 onsetM = leaderFullM + leftS * (leaderRate - 0.5 * l.mps2 * leftS);
            m4 here = holds & open & (gapM > 0.0) & (leaderFullM > 0.0) & (f.onsetS <= lt.stopS) & (onsetM < -GRAZING_M);
            v4 r = root(leaderRate * leaderRate + 2 * l.mps2 * leaderFullM);
            v4 afterS = leaderRate <= 0.0 ? 2 * leaderFullM / (r - leaderRate) : (leaderRate + r) / l.mps2;
            time = here ? lt.fullS + afterS : time;
            smallest = here ? all(0) : smallest;
            closing = here ? least(f.mps, r) : closing;
            open &= ~here;
        }
    }
    store(timeS, time);
    store(smallestM, smallest);
    store(closingMps, closing);
    for (int left = lanes(open); left != 0; left &= left - 1) {
        int k = __builtin_ctz(left);
        Outcome o = byPhases(l.lane(k), f.lane(k), gapM[k]);
        timeS[k] = o.timeS;
        smallestM[k] = o.smallestM;
        closingMps[k] = o.closingMps;
    }
}

}  // namespace pair
