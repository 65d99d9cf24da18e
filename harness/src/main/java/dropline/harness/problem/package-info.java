/**
 * What is wrong with a file a person wrote, said so that they can mend it. Start from
 * {@link dropline.harness.problem.Problem} and {@link dropline.harness.problem.Problems}. Reads no file and prints
 * nothing.
 */
@NullMarked
package dropline.harness.problem;

import org.jspecify.annotations.NullMarked;
