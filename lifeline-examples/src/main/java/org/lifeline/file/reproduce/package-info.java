/**
 * The reproduction of a result: a result file is checked against its design file, once by computing it anew and comparing
 * every number, once by laws that the stored numbers must obey, without the solver.
 */
@NullMarked
package org.lifeline.file.reproduce;

import org.jspecify.annotations.NullMarked;
