/**
 * YAML a person wrote, each part with its place, and what is wrong with it. Start from
 * {@link dropline.harness.yaml.TreeReader}. Of the keys of files it knows only those that tell one sort of file from
 * another.
 */
@NullMarked
package dropline.harness.yaml;

import org.jspecify.annotations.NullMarked;
