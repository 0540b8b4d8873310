package org.lifeline.examples.cli;

/** How the program ends. */
final class ExitCode {
    /** The analysis was done, whatever its verdict. */
    static final int DONE = 0;

    /** A fault of the program. */
    static final int FAULT = 1;

    /** A bad file or command line. */
    static final int BAD_INPUT = 2;

    /** No equilibrium was found. */
    static final int NO_EQUILIBRIUM = 3;

    /** A check failed: a stored result did not come out again, or a computed one breaks a law that it must obey. */
    static final int CHECK_FAILED = 4;

    private ExitCode() {}
}
