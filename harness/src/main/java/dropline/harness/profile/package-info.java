/**
 * What a program says of how long its parts take, made into a profile's tasks. Start from
 * {@link dropline.harness.profile.TimedTasks}.
 */
@NullMarked
package dropline.harness.profile;

import org.jspecify.annotations.NullMarked;
