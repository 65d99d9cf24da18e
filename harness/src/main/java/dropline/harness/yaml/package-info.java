/**
 * YAML a person wrote, each part with its place, and what is wrong with it. Start from
 * {@link dropline.harness.yaml.TreeReader}. Knows no key of any file.
 */
@NullMarked
package dropline.harness.yaml;

import org.jspecify.annotations.NullMarked;
