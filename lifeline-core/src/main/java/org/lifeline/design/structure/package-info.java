/**
 * Floor 6e: loads of a line on the structure that carries it.
 *
 * <p>Uses the assessment, the envelope, the analyses, {@code internal.numeric}, the model and base. Start reading at {@link
 * org.lifeline.design.structure.SupportLoads}.
 *
 * <p>For every support the largest of each {@link org.lifeline.design.structure.LoadEffect} is handed over as a whole load case:
 * the force vector there with the simultaneous vectors at all other supports. Forces are those of the line on the support,
 * components along x, y, z in [N], z up, with the model factor on force of the design; moments about the base of a post in
 * [N·m], right-handed. A pull of the connection at an angle across the line is {@link org.lifeline.design.structure.SidePull}.
 *
 * <p>Limits: no partial factor of any code is applied; factors are the user's. Wind, ice, the weight of posts and what else
 * the structure carries are not in these loads.
 */
@NullMarked
package org.lifeline.design.structure;

import org.jspecify.annotations.NullMarked;
