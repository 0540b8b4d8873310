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

    /** A result did not come out again. */
    static final int NOT_REPRODUCED = 4;

    private ExitCode() {}
}
