package org.lifeline.base;

import java.io.Serializable;

/**
 * How an iteration ended.
 *
 * <p>Immutable and thread-safe.
 *
 * @param iterations number of Newton steps in all
 * @param residual largest scaled residual at the end [-]
 * @param tolerance the bound that the residual was held to [-]
 * @since 1.0.0
 * @serial exclude
 */
@SuppressWarnings("InvalidBlockTag") // components have no comment of their own to be serialized with
public record Convergence(int iterations, double residual, double tolerance) implements Serializable {

    /**
     * The record of two stages, one after the other.
     *
     * @param next the later stage
     * @return iterations added, residual and tolerance of the worse stage
     */
    public Convergence then(Convergence next) {
        return new Convergence(
                iterations + next.iterations, Math.max(residual, next.residual), Math.max(tolerance, next.tolerance));
    }
}
