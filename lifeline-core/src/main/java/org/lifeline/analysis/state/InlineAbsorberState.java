package org.lifeline.analysis.state;

/**
 * What an in-line energy absorber has done.
 *
 * <p>Immutable and thread-safe.
 *
 * @param supportId the end anchor that it is fixed to
 * @param extension extension [m]
 * @param remaining extension that is left before it bottoms out [m]; 0 when it has
 * @since 1.0.0
 */
public record InlineAbsorberState(String supportId, double extension, double remaining) {
    /**
     * Tells whether the absorber is used up.
     *
     * @return true if nothing is left
     */
    public boolean bottomedOut() {
        return remaining <= 0;
    }
}
