package dropline.harness.size;

/**
 * One run of a growth.
 *
 * @param count panels added
 * @param seed the run's
 * @param dead the dead node, as in {@link Candidate}
 */
record Case(int count, long seed, int dead) {
    Case at(int otherCount) {
        return new Case(otherCount, seed, dead);
    }

    Case with(long otherSeed) {
        return new Case(count, otherSeed, dead);
    }

    boolean isHealthy() {
        return dead == Candidate.HEALTHY;
    }
}
