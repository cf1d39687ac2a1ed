/**
 * Marks on what needs a word, and the thread of messages.
 */
@NullMarked
package org.fallow.contact.web;

import org.jspecify.annotations.NullMarked;
