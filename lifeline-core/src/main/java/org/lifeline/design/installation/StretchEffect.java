package org.lifeline.design.installation;

/**
 * What a constructional stretch leaves of the pretension.
 *
 * <p>Immutable and thread-safe.
 *
 * @param stretch lengthening over length [-]
 * @param pretension tension at the first end anchor that is left, at the temperature of installation of the design [N]
 * @param sag largest sag of all spans then [m]
 * @param retension stress-free cable to be taken up for the pretension of the design [m]
 * @since 1.0.0
 */
public record StretchEffect(double stretch, double pretension, double sag, double retension) {}
