package app.restwater.ui

import androidx.compose.runtime.Composable
import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.runtime.staticCompositionLocalOf
import androidx.compose.ui.text.TextMeasurer
import androidx.compose.ui.text.rememberTextMeasurer

/**
 * One measurer for all screens. It caches its results, and a screen shows the same words again and again: after the
 * first CAST and WOUND IN their keys are no longer measured.
 */
@Composable
internal fun MeasuredOnce(content: @Composable () -> Unit) =
    CompositionLocalProvider(LocalMeasurer provides rememberTextMeasurer(KEPT), content = content)

/** The measurer of all screens; a new one if a part is drawn without them. */
@Composable
internal fun textMeasurer(): TextMeasurer = LocalMeasurer.current ?: rememberTextMeasurer()

private val LocalMeasurer = staticCompositionLocalOf<TextMeasurer?> { null }

/** Texts in the cache: those of several screens, in the sizes that are tried until one fits. */
private const val KEPT = 1_024
