package org.lifeline.internal.line.installation;

/** The numbers that steer how an installed state is found, each with its unit and the reason for its size. */
final class InstallationTolerances {
    private InstallationTolerances() {}

    /** Weight that stands for none where a weightless cable is slack [N/m]: a billionth of what any rope weighs. */
    static final double NEXT_TO_WEIGHTLESS = 1e-9;

    /** Difference of two unstretched lengths of one span that is rounding of the tension carried over [-]. */
    static final double SAME_LENGTH = 1e-9;

    /** Share by which a search starts above the least tension that is possible [-], and the least tension [N]. */
    static final double ABOVE_LEAST = 1e-9;

    /** Share by which a tension may miss another for rounding alone. */
    static final double ROUNDING = 1e-12;

    /** Iterations of the angle at one support: each gains a factor of about μ T dθ/dT, well below one. */
    static final int MOST_ANGLES = 200;

    /** Change of an angle that is rounding [rad]. */
    static final double SAME_ANGLE = 1e-15;

    /** First step of the search for a bracket of the tension, in its logarithm [-], and how often it is doubled. */
    static final double FIRST_STEP = 0.1;

    static final int MOST_STEPS = 12;
}
