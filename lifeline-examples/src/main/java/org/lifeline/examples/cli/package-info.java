/**
 * The command line: {@code analyze} and {@code help}.
 *
 * <p>Exit codes: 0 the analysis was done, whatever its verdict; 2 a bad file or command line; 3 no equilibrium was found; 4 a
 * check failed: a result did not come out again or broke a law; 1 a fault of the program or of the machine it runs on. Results go to standard output only when everything was done;
 * everything else goes to standard error.
 */
@NullMarked
package org.lifeline.examples.cli;

import org.jspecify.annotations.NullMarked;
