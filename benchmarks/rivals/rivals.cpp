// The library's kernels in C++: stops, pairs, Monte Carlo. Usage: rivals check|time FOLDER
// FOLDER holds the scenarios and outcomes that the Java program Rivals wrote, one file of little-endian doubles a column.
// "check" compares outcomes; "time" prints the processor time of each operation, median of 15 rounds of at least 60 ms.
#include <time.h>

#include <array>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <fstream>
#include <functional>
#include <sstream>
#include <string>
#include <vector>

#include "pair.hpp"

using std::string;
using std::vector;
using namespace pair;

static string folder;

static vector<double> column(const string& name) {
    std::ifstream in(folder + "/" + name + ".f64", std::ios::binary | std::ios::ate);
    if (!in) {
        std::fprintf(stderr, "no column %s in %s\n", name.c_str(), folder.c_str());
        std::exit(1);
    }
    vector<double> values(in.tellg() / sizeof(double));
    in.seekg(0);
    in.read(reinterpret_cast<char*>(values.data()), values.size() * sizeof(double));
    return values;
}

// ---- stops ----

static void distances(int n, const double* v, const double* onset, const double* tr, const double* a, double* s) {
    for (int i = 0; i < n; i++) {
        double common = 0.5 * v[i] * (tr[i] + v[i] / a[i]) - a[i] * tr[i] * tr[i] * (1.0 / 24);
        double inside = v[i] * std::sqrt(2 * v[i] * tr[i] / a[i]) * (2.0 / 3.0);
        s[i] = v[i] * onset[i] + (v[i] >= 0.5 * a[i] * tr[i] ? common : inside);
    }
}

// the other way: all by the common formula, then mend the few
static void distancesMended(int n, const double* v, const double* onset, const double* tr, const double* a, double* s) {
    for (int i = 0; i < n; i++) {
        s[i] = v[i] * onset[i] + (0.5 * v[i] * (tr[i] + v[i] / a[i]) - a[i] * tr[i] * tr[i] * (1.0 / 24));
    }
    for (int i = 0; i < n; i++) {
        if (!(v[i] >= 0.5 * a[i] * tr[i])) {
            s[i] = v[i] * onset[i] + v[i] * std::sqrt(2 * v[i] * tr[i] / a[i]) * (2.0 / 3.0);
        }
    }
}

static void distancesAndTimes(
        int n, const double* v, const double* onset, const double* tr, const double* a, double* s, double* t) {
    for (int i = 0; i < n; i++) {
        double quotient = v[i] / a[i];
        bool isCommon = v[i] >= 0.5 * a[i] * tr[i];
        double braking = isCommon ? quotient + 0.5 * tr[i] : std::sqrt(2 * quotient * tr[i]);
        double common = 0.5 * v[i] * (tr[i] + quotient) - a[i] * tr[i] * tr[i] * (1.0 / 24);
        s[i] = v[i] * onset[i] + (isCommon ? common : v[i] * braking * (2.0 / 3.0));
        t[i] = onset[i] + braking;
    }
}

static void distancesAndTimesMended(
        int n, const double* v, const double* onset, const double* tr, const double* a, double* s, double* t) {
    for (int i = 0; i < n; i++) {
        double quotient = v[i] / a[i];
        s[i] = v[i] * onset[i] + (0.5 * v[i] * (tr[i] + quotient) - a[i] * tr[i] * tr[i] * (1.0 / 24));
        t[i] = onset[i] + (quotient + 0.5 * tr[i]);
    }
    for (int i = 0; i < n; i++) {
        if (!(v[i] >= 0.5 * a[i] * tr[i])) {
            double braking = std::sqrt(2 * v[i] * tr[i] / a[i]);
            s[i] = v[i] * onset[i] + v[i] * braking * (2.0 / 3.0);
            t[i] = onset[i] + braking;
        }
    }
}

// ---- pairs ----

struct Pairs {
    vector<double> lv = column("pair_leader_speed_mps"), lo = column("pair_leader_onset_s"),
                   lb = column("pair_leader_build_up_s"), la = column("pair_leader_decel_mps2"),
                   fv = column("pair_follower_speed_mps"), fo = column("pair_follower_onset_s"),
                   fb = column("pair_follower_build_up_s"), fa = column("pair_follower_decel_mps2"),
                   gap = column("pair_gap_m");
    int n = (int)gap.size();
    vector<double> time = vector<double>(n), smallest = vector<double>(n), closing = vector<double>(n);

    void scalar() {
        for (int i = 0; i < n; i++) {
            Outcome o = outcome({lv[i], lo[i], lb[i], la[i]}, {fv[i], fo[i], fb[i], fa[i]}, gap[i]);
            time[i] = o.timeS;
            smallest[i] = o.smallestM;
            closing[i] = o.closingMps;
        }
    }

    void searched() {
        for (int i = 0; i < n; i++) {
            Outcome o = byPhases({lv[i], lo[i], lb[i], la[i]}, {fv[i], fo[i], fb[i], fa[i]}, gap[i]);
            time[i] = o.timeS;
            smallest[i] = o.smallestM;
            closing[i] = o.closingMps;
        }
    }

    void fourAtATime() {
        for (int i = 0; i + 4 <= n; i += 4) {
            Stop4 l{load(&lv[i]), load(&lo[i]), load(&lb[i]), load(&la[i])};
            Stop4 f{load(&fv[i]), load(&fo[i]), load(&fb[i]), load(&fa[i])};
            outcomes4(l, Terms4(l), f, Terms4(f), load(&gap[i]), &time[i], &smallest[i], &closing[i]);
        }
    }
};

// ---- Monte Carlo: three draws from quantile tables, outcome, statistics ----

// cubic pieces over 52 octaves of 32 cells in either tail, as in QuantileTable
struct Table {
    static constexpr int CELLS = 52 << 5, SHIFT = 52 - 5;
    vector<std::array<double, 4>> c;

    // the quantiles at the four Chebyshev points of each cell, lower tail first
    explicit Table(const vector<double>& q) : c(q.size() / 4) {
        double x[4];
        for (int k = 0; k < 4; k++) {
            x[k] = 0.5 - 0.5 * std::cos((2 * k + 1) * M_PI / 8);
        }
        for (size_t cell = 0; cell < c.size(); cell++) {
            double d[4];
            std::copy_n(&q[4 * cell], 4, d);
            for (int order = 1; order < 4; order++) {
                for (int k = 3; k >= order; k--) {
                    d[k] = (d[k] - d[k - 1]) / (x[k] - x[k - order]);
                }
            }
            double p[4] = {d[3], 0, 0, 0};
            for (int k = 2; k >= 0; k--) {
                for (int j = 3; j > 0; j--) {
                    p[j] = p[j - 1] - x[k] * p[j];
                }
                p[0] = d[k] - x[k] * p[0];
            }
            std::copy_n(p, 4, c[cell].begin());
        }
    }

    double quantile(double u) const {
        constexpr uint64_t LOWEST = 0x3ca0000000000000ULL >> SHIFT;  // 2^-53
        double tail = std::min(u, 1 - u);
        uint64_t bits;
        std::memcpy(&bits, &tail, 8);
        const double* p = c[(u > 0.5 ? CELLS + 1 : 0) + ((bits >> SHIFT) - LOWEST)].data();
        double t = (double)(int64_t)(bits & ((1ULL << SHIFT) - 1)) * (1.0 / (1ULL << SHIFT));
        return p[0] + t * (p[1] + t * (p[2] + t * p[3]));
    }
};

// SplitMix64 read at a place, as in CounterRandom
static double uniform(uint64_t place) {
    uint64_t z = (place ^ (place >> 30)) * 0xbf58476d1ce4e5b9ULL;
    z = (z ^ (z >> 27)) * 0x94d049bb133111ebULL;
    z ^= z >> 31;
    return ((double)(int64_t)(z >> 12) + 0.5) * 0x1p-52;
}

struct Moments {
    double count = 0, sum = 0, mean = 0, squares = 0, least = FOR_EVER, most = -FOR_EVER;

    void add(const double* x, int n) {
        if (n == 0) {
            return;
        }
        double s = 0, lo = FOR_EVER, hi = -FOR_EVER, q = 0;
        for (int i = 0; i < n; i++) {
            s += x[i];
            lo = std::min(lo, x[i]);
            hi = std::max(hi, x[i]);
        }
        double m = s / n;
        for (int i = 0; i < n; i++) {
            q += (x[i] - m) * (x[i] - m);
        }
        double total = count + n, delta = m - mean;
        mean += delta * (n / total);
        squares += q + delta * delta * (count / total * n);
        count = total;
        least = std::min(least, lo);
        most = std::max(most, hi);
    }
};

struct MonteCarlo {
    static constexpr int ROWS = 512;
    static constexpr uint64_t GAMMA = 0x9e3779b97f4a7c15ULL, AXIS = 1ULL << 48;
    static constexpr double SPEED = 25, LEADER = 7, DEAD = 0.1, BUILD_UP = 0.25, LATENCY = 0.01;
    static constexpr int FIRST_DRAWN = 5;
    static constexpr uint64_t SEED = 13;
    Table reaction{column("table_reaction")}, timeGap{column("table_time_gap")}, decel{column("table_follower_decel")};
    long draws;
    double u[3][ROWS], onset[ROWS], gap[ROWS], time[ROWS], smallest[ROWS], closing[ROWS], contact[ROWS + 1];
    Moments closingMoments, gapMoments;
    vector<int64_t> histogram, sketch;

    explicit MonteCarlo(long draws) : draws(draws) {}

    void draw(long from, int n) {
        const Table* tables[] = {&reaction, &timeGap, &decel};
        for (int a = 0; a < 3; a++) {
            uint64_t place = SEED + ((FIRST_DRAWN + a) * AXIS + from + 1) * GAMMA;
            for (int i = 0; i < n; i++) {
                u[a][i] = tables[a]->quantile(uniform(place + i * GAMMA));
            }
        }
    }

    double drawAll() {
        double sum = 0;
        for (long from = 0; from < draws; from += ROWS) {
            draw(from, ROWS);
            sum += u[0][0] + u[1][0] + u[2][0];
        }
        return sum;
    }

    void gather(int n) {
        int contacts = 0;
        for (int i = 0; i < n; i++) {
            contact[contacts] = closing[i];
            contacts += closing[i] >= 0;
        }
        closingMoments.add(contact, contacts);
        gapMoments.add(smallest, n);
        for (int i = 0; i < contacts; i++) {
            histogram[std::min(119, (int)(contact[i] * 2))]++;
            // 256 cells an octave, cut out of the bits
            uint64_t bits;
            std::memcpy(&bits, &contact[i], 8);
            constexpr uint64_t LOWEST = 0x3eb0000000000000ULL >> 44;  // 2^-20
            sketch[contact[i] < 0x1p-20 ? 0 : (bits >> 44) - LOWEST + 1]++;
        }
    }

    void run() {
        closingMoments = gapMoments = Moments();
        histogram.assign(120, 0);
        sketch.assign(44 * 256 + 2, 0);
        Stop4 leader{all(SPEED), all(DEAD), all(BUILD_UP), all(LEADER)};
        Terms4 leaderTerms(leader);
        for (long from = 0; from < draws; from += ROWS) {
            draw(from, ROWS);
            for (int i = 0; i < ROWS; i++) {
                onset[i] = LATENCY + u[0][i] + DEAD;
                gap[i] = u[1][i] * SPEED;
            }
            for (int i = 0; i < ROWS; i += 4) {
                Stop4 f{all(SPEED), load(&onset[i]), all(BUILD_UP), load(&u[2][i])};
                outcomes4(leader, leaderTerms, f, Terms4(f), load(&gap[i]), &time[i], &smallest[i], &closing[i]);
            }
            gather(ROWS);
        }
    }
};

// ---- checks ----

static bool good = true;

static void report(const string& what, double worst, double allowed) {
    bool ok = worst <= allowed;
    good = good && ok;
    std::printf("%-52s %10.3g  at most %7.1g  %s\n", what.c_str(), worst, allowed, ok ? "ok" : "FAILS");
}

static void compare(const string& what, const vector<double>& mine, const string& name, double allowed) {
    vector<double> theirs = column(name);
    double worst = mine.size() == theirs.size() ? 0 : FOR_EVER;
    for (size_t i = 0; i < theirs.size() && worst < FOR_EVER; i++) {
        bool both = std::isnan(mine[i]) && std::isnan(theirs[i]);
        worst = both ? worst : std::max(worst, std::isnan(mine[i] - theirs[i]) ? FOR_EVER : std::fabs(mine[i] - theirs[i]));
    }
    report(what + ", largest difference", worst, allowed);
}

static void comparePairs(const string& what, const Pairs& p) {
    vector<double> theirs = column("pair_closing_mps");
    long wrong = 0;
    for (int i = 0; i < p.n; i++) {
        wrong += std::isnan(p.closing[i]) != std::isnan(theirs[i]);
    }
    report(what + ", wrong outcomes", wrong, 0);
    compare(what + ", closing speed m/s", p.closing, "pair_closing_mps", 1e-11);
    compare(what + ", smallest gap m", p.smallest, "pair_smallest_gap_m", 1e-11);
    compare(what + ", time s", p.time, "pair_time_s", 1e-9);
}

// ---- times ----

static double cpuNs() {
    timespec t;
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &t);
    return t.tv_sec * 1e9 + t.tv_nsec;
}

static void timed(const string& name, double perCall, const std::function<void()>& operation) {
    vector<double> rounds;
    for (double end = cpuNs() + 3e8; cpuNs() < end;) {
        operation();
    }
    for (int round = 0; round < 15; round++) {
        double start = cpuNs(), spent;
        long calls = 0;
        do {
            operation();
            calls++;
            spent = cpuNs() - start;
        } while (spent < 6e7);
        rounds.push_back(spent / calls / perCall);
    }
    std::sort(rounds.begin(), rounds.end());
    std::printf("%s\t%.4f\n", name.c_str(), rounds[7]);
}

int main(int count, char** args) {
    if (count != 3) {
        std::fprintf(stderr, "usage: rivals check|time FOLDER\n");
        return 2;
    }
    folder = args[2];
    vector<double> v = column("stop_speed_mps"), onset = column("stop_onset_s"), tr = column("stop_build_up_s"),
                   a = column("stop_decel_mps2"), s(v.size()), t(v.size());
    int n = (int)v.size();
    Pairs p;
    vector<double> expected = column("monte_carlo");  // draws, contacts, mean closing speed, mean smallest gap
    MonteCarlo mc((long)expected[0]);
    if (string(args[1]) == "check") {
        distances(n, v.data(), onset.data(), tr.data(), a.data(), s.data());
        compare("stop, distance m", s, "stop_distance_m", 1e-11);
        distancesMended(n, v.data(), onset.data(), tr.data(), a.data(), s.data());
        compare("stop mended, distance m", s, "stop_distance_m", 1e-11);
        for (auto f : {distancesAndTimes, distancesAndTimesMended}) {
            f(n, v.data(), onset.data(), tr.data(), a.data(), s.data(), t.data());
            compare("stop, both: distance m", s, "stop_distance_m", 1e-11);
            compare("stop, both: time s", t, "stop_time_s", 1e-11);
        }
        p.scalar();
        comparePairs("pair by cases", p);
        p.fourAtATime();
        comparePairs("pairs four at a time", p);
        p.searched();
        comparePairs("pair by phases", p);
        mc.run();
        report("Monte Carlo, difference in contacts", std::fabs(mc.closingMoments.count - expected[1]), 0);
        report("Monte Carlo, mean closing speed m/s", std::fabs(mc.closingMoments.mean - expected[2]), 1e-11);
        report("Monte Carlo, mean smallest gap m", std::fabs(mc.gapMoments.mean - expected[3]), 1e-11);
        return good ? 0 : 1;
    }
    timed("stop batch distance", n, [&] { distances(n, v.data(), onset.data(), tr.data(), a.data(), s.data()); });
    timed("stop batch distance mended", n, [&] { distancesMended(n, v.data(), onset.data(), tr.data(), a.data(), s.data()); });
    timed("stop batch both", n, [&] { distancesAndTimes(n, v.data(), onset.data(), tr.data(), a.data(), s.data(), t.data()); });
    timed("stop batch both mended", n, [&] { distancesAndTimesMended(n, v.data(), onset.data(), tr.data(), a.data(), s.data(), t.data()); });
    timed("pair loop", p.n, [&] { p.scalar(); });
    timed("pair batch", p.n, [&] { p.fourAtATime(); });
    timed("pair phases", p.n, [&] { p.searched(); });
    timed("draws", mc.draws, [&] { s[0] += mc.drawAll(); });
    timed("monte carlo", mc.draws, [&] { mc.run(); });
    std::fprintf(stderr, "sum %g\n", s[0] + p.time[0]);
}
