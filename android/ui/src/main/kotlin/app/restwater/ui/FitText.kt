package app.restwater.ui

import androidx.compose.foundation.Canvas
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.Spacer
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.runtime.Composable
import androidx.compose.runtime.remember
import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.graphics.graphicsLayer
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.semantics.clearAndSetSemantics
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.TextLayoutResult
import androidx.compose.ui.text.TextMeasurer
import androidx.compose.ui.text.TextStyle
import androidx.compose.ui.text.drawText
import androidx.compose.ui.text.font.FontFamily
import androidx.compose.ui.text.font.FontWeight
import androidx.compose.ui.text.style.LineHeightStyle
import androidx.compose.ui.text.style.TextAlign
import androidx.compose.ui.text.style.TextOverflow
import androidx.compose.ui.unit.Constraints
import androidx.compose.ui.unit.Density
import androidx.compose.ui.unit.em
import app.restwater.core.Rect
import app.restwater.core.subMm
import app.restwater.core.unbroken
import java.util.concurrent.ConcurrentHashMap

/** Height of a capital letter or a digit as a share of the em in the sans faces of phones, within 2 %. */
internal const val CAP_OF_EM = 0.711f

/** A text in the requested size, or in the largest smaller size at which all of it is visible. */
@Composable
fun FitText(
    text: String,
    emPx: Float,
    color: Color,
    modifier: Modifier = Modifier,
    weight: FontWeight = FontWeight.Medium,
    align: TextAlign = TextAlign.Start,
    middle: Boolean = true,
    oneLine: Boolean = false,
) {
    val measurer = textMeasurer()
    val density = LocalDensity.current
    // The element around the words has them as its description, so that a screen reader doesn't read drawn text twice.
    Spacer(
        modifier.fitted(listOf(text, emPx, weight, align, oneLine, density), color, middle, { if (it.single().whole) "" else text }) { width, height ->
            listOf(measurer.fit(text, emPx, width, height, density, weight, align, if (oneLine) 1 else MOST_LINES))
        },
    )
}

/** The same, with a description of its own: for a text that no element around it describes. */
@Composable
fun SpokenText(
    text: String,
    emPx: Float,
    color: Color,
    modifier: Modifier = Modifier,
    weight: FontWeight = FontWeight.Medium,
    middle: Boolean = true,
) = Box(if (text.isBlank()) modifier else modifier.semantics { contentDescription = text }) {
    FitText(text, emPx, color, Modifier.fillMaxSize(), weight, middle = middle)
}

/** A text in lines, its size, and whether all of it is visible. */
class Fitted(val lines: TextLayoutResult, val em: Float, val whole: Boolean)

/** One size for keys that belong together: the largest up to [emPx] at which every label fits its place. */
@Composable
fun commonEm(labels: List<Pair<String, Rect>>, emPx: Float, weight: FontWeight = FontWeight.Bold): Float {
    val measurer = textMeasurer()
    val density = LocalDensity.current
    return remember(labels, emPx, density, weight) {
        labels.filter { it.first.isNotBlank() }.minOfOrNull { (label, place) ->
            measurer.fit(label, emPx, place.width.toInt(), place.height.toInt(), density, weight).em
        } ?: emPx
    }
}

/**
 * Measures a text at [emPx], then smaller and smaller until all of it fits [width] x [height] without a broken word.
 */
fun TextMeasurer.fit(
    text: String,
    emPx: Float,
    width: Int,
    height: Int,
    density: Density,
    weight: FontWeight,
    align: TextAlign = TextAlign.Start,
    mostLines: Int = MOST_LINES,
): Fitted {
    var em = emPx
    while (true) {
        val fitted = fitAt(em, text, width, height, density, weight, align, mostLines)
        if (fitted.whole || em <= emPx * SMALLEST) return fitted
        em *= SMALLER
    }
}

private fun TextMeasurer.fitAt(
    em: Float,
    text: String,
    width: Int,
    height: Int,
    density: Density,
    weight: FontWeight,
    align: TextAlign = TextAlign.Start,
    mostLines: Int = MOST_LINES,
): Fitted {
    val lines = (height / (em * LINE)).toInt().coerceIn(1, mostLines)
    val bound = text.withUnits()
    val measured = measure(
        bound, style(em, density, weight, align), TextOverflow.Ellipsis, softWrap = lines > 1, maxLines = lines,
        constraints = Constraints(minWidth = width, maxWidth = width),
    )
    return Fitted(measured, em, !measured.hasVisualOverflow && !measured.breaksAWord(bound) && measured.size.height <= height + 1)
}

/** Height of the whole of a text at [em] in [width]. */
fun TextMeasurer.height(text: String, em: Float, width: Double, density: Density, weight: FontWeight): Double {
    val most = width.toInt().coerceAtLeast(1)
    val measured = measure(text.withUnits(), style(em, density, weight, TextAlign.Start), constraints = Constraints(minWidth = most, maxWidth = most))
    return measured.size.height + 1.0
}

/** Width of a text on one line. */
fun TextMeasurer.width(text: String, em: Float, density: Density, weight: FontWeight): Double =
    measure(text, style(em, density, weight, TextAlign.Start), softWrap = false, maxLines = 1).size.width.toDouble()

private fun TextLayoutResult.breaksAWord(text: String): Boolean =
    (0 until lineCount - 1).any { line ->
        val end = getLineEnd(line)
        end in 1 until text.length && text[end - 1] !in BREAKS && text[end] !in BREAKS.dropLast(1)
    }

/** With each figure bound to its unit or to what it counts, as the core binds them. A text is drawn in many sizes, and asked for once. */
internal fun String.withUnits(): String {
    if (BOUND.size > MOST_BOUND) BOUND.clear()
    return BOUND.getOrPut(this) { unbroken(this) }
}

private val BOUND = ConcurrentHashMap<String, String>()

/** Texts of several screens. */
private const val MOST_BOUND = 1_024

/** Where a line may be turned over: after each of these, and before all but the last. */
private const val BREAKS = " \n-"

private fun style(em: Float, density: Density, weight: FontWeight, align: TextAlign, family: FontFamily = Face.words) = TextStyle(
    fontSize = with(density) { em.toSp() },
    fontWeight = weight,
    fontFamily = family,
    textAlign = align,
    lineHeight = LINE.em,
    lineHeightStyle = LineHeightStyle(LineHeightStyle.Alignment.Center, LineHeightStyle.Trim.None),
)

/** More lines than any place holds. */
private const val MOST_LINES = 99

/** Height of a line relative to its em; the core's layout uses the same value. */
private const val LINE = 1.2f

/** A sentence may be made so much smaller to stay on one line. */
private const val HARDLY_SMALLER = 0.85f

/** A text is never made smaller than this share of the requested size. */
internal const val SMALLEST = 0.25f

/** One step smaller: 14 steps halve a size, so that at 200 % text the size of 100 % is one of the steps. */
internal const val SMALLER = 0.95169515f

/**
 * Digits as high as the place, in the widest cut of the clock that fits. If none fits, the minutes stay high in the
 * narrowest cut and the seconds become small. [text] is read while they are drawn into a layer of their own: each
 * second redraws the digits and reuses the recorded rest of the screen.
 */
@Composable
fun Digits(text: () -> String, color: Color, modifier: Modifier = Modifier, align: TextAlign = TextAlign.Start, several: Boolean = false) {
    val measurer = textMeasurer()
    val density = LocalDensity.current
    Canvas(modifier.clearAndSetSemantics { }.graphicsLayer()) {
        val digits = text()
        val em = size.height / CAP_OF_EM
        val parts = measurer.clock(digits, em, size.width, density, several)
        val apart = if (parts.size > 1) em * BEFORE_SECONDS else 0f
        var left = if (align == TextAlign.End) (size.width - apart - parts.sumOf { it.size.width }).coerceAtLeast(0f) else 0f
        for (part in parts) {
            drawText(part, color, Offset(left, size.height - part.firstBaseline))
            left += part.size.width + apart
        }
    }
}

private fun TextMeasurer.clock(digits: String, em: Float, all: Float, density: Density, several: Boolean): List<TextLayoutResult> {
    fun line(text: String, em: Float, cut: FontFamily) =
        measure(text, style(em, density, FontWeight.Bold, TextAlign.Left, cut), softWrap = false, maxLines = 1)
    if (!several) Face.clocks.forEach { cut -> line(digits, em, cut).let { if (it.size.width <= all) return listOf(it) } }
    val width = all - em * BEFORE_SECONDS
    val narrowest = Face.clocks.last()
    val at = digits.lastIndexOf(':').coerceAtLeast(0)
    val (minutes, seconds) = digits.substring(0, at) to digits.substring(at)
    val (long, short) = line(minutes, em, narrowest).size.width to line(seconds, em, narrowest).size.width
    val share = ((width - long) / short).coerceIn(LEAST_SECONDS, MOST_SECONDS)
    // If even that does not fit, all of it becomes smaller in the same proportions.
    val size = em * (width / (long + short * share)).coerceAtMost(1f)
    return listOf(line(minutes, size, narrowest), line(seconds, size * share, narrowest))
}

/** Between high minutes and the colon of their seconds, as a share of the minutes' em: a 4 would run into it. */
private const val BEFORE_SECONDS = 0.05f

/** Height of the seconds beside high minutes, as a share of the minutes' height. */
private const val MOST_SECONDS = 0.5f
private const val LEAST_SECONDS = 0.3f

/**
 * The first sentence large, the whole of the second below it, then as many of the others as fit. Large text becomes smaller, down to
 * [least] of its size, before it drops a sentence that is there at 100 %; where [verdictFirst], the first two, the verdict and what it
 * rests on, are not made much smaller for a further one. [optional] if the others are shown only where they have room beside the
 * first at the size of 100 %.
 */
@Composable
fun Sentences(first: String, others: List<String>, firstPx: Float, otherPx: Float, color: Color, modifier: Modifier = Modifier, least: Float = 1f, optional: Boolean = false, verdictFirst: Boolean = false) {
    val measurer = textMeasurer()
    val density = LocalDensity.current
    val below = others.filter { it.isNotBlank() }
    fun cut(shown: List<Fitted>) = (listOf(first) + below.take(if (optional) 0 else 1)).filterIndexed { i, _ -> shown.getOrNull(i)?.whole != true }.joinToString(" ")
    Spacer(
        modifier.fitted(listOf(first, below, firstPx, otherPx, density, least, optional, verdictFirst), color, false, ::cut) { width, height ->
            measurer.largeColumn(first, below, firstPx, otherPx, width, height, density, least, optional, verdictFirst)
        },
    )
}

private fun TextMeasurer.largeColumn(
    first: String, others: List<String>, firstPx: Float, otherPx: Float, width: Int, height: Int, density: Density, least: Float, optional: Boolean, verdictFirst: Boolean,
): List<Fitted> {
    val large = column(first, if (optional) emptyList() else others, firstPx, otherPx, width, height, density)
    if (least >= 1f) return large
    val wanted = if (!optional) column(first, others, firstPx * least, otherPx * least, width, height, density).size
    else 1 + (others.size downTo 0).first { n -> all(first, others.take(n), firstPx * least, otherPx * least, width, height, density).drop(1).all { it.whole } }
    val smallest = if (verdictFirst && !optional) least.coerceAtLeast(FOR_A_FURTHER) else least
    var share = 1f
    while (wanted > large.size && share > smallest * HAIR) {
        // The first sentence keeps its size longest.
        for (before in BEFORE_OTHERS) {
            val all = all(first, others.take(wanted - 1), firstPx * share, otherPx * (share / before).coerceAtLeast(least), width, height, density)
            if (all.all { it.whole }) return all
        }
        share *= SMALLER
    }
    val keepsAll = wanted > large.size && !optional && !verdictFirst
    return if (keepsAll) column(first, others, firstPx * least, otherPx * least, width, height, density) else large
}

/** All of them, each in what those above it leave. */
private fun TextMeasurer.all(
    first: String, others: List<String>, firstPx: Float, otherPx: Float, width: Int, height: Int, density: Density,
): List<Fitted> = listing {
    add(head(first, firstPx, width, height, density))
    for (sentence in others) {
        val room = (height - sumOf { it.lines.size.height }).coerceAtLeast(0)
        add(fitAt(otherPx, sentence, width, room, density, FontWeight.Medium))
    }
}

/** The first two sentences of large text become no smaller than this share of their size for the sake of a further one. */
private const val FOR_A_FURTHER = 0.75f

/** How many times as large as at 100 % the first sentence is in comparison with the others. */
private val BEFORE_OTHERS = listOf(1f, 1.25f, 1.6f)

/** Fourteen steps halve a size within this. */
private const val HAIR = 0.999f

private fun TextMeasurer.column(
    first: String, others: List<String>, firstPx: Float, otherPx: Float, width: Int, height: Int, density: Density,
): List<Fitted> {
    if (others.isEmpty()) return listOf(alone(first, firstPx, width, height, density))
    val shown = two(first, others[0], firstPx, otherPx, width, height, density).toMutableList()
    for (sentence in others.drop(1)) {
        val room = height - shown.sumOf { it.lines.size.height }
        if (room < otherPx * LINE * 0.8f) break
        val next = fit(sentence, shown[1].em, width, room, density, FontWeight.Medium)
        if (!next.whole || next.em < otherPx * 0.7f) break
        shown += next
    }
    return shown
}

/** A first sentence at [em], or hardly smaller if that keeps it on one line. */
private fun TextMeasurer.head(text: String, em: Float, width: Int, height: Int, density: Density): Fitted {
    var size = em
    while (size >= em * HARDLY_SMALLER) {
        fitAt(size, text, width, height, density, FontWeight.Bold, mostLines = 1).let { if (it.whole) return it }
        size *= SMALLER
    }
    return fitAt(em, text, width, height, density, FontWeight.Bold)
}

/** The largest size at which a first sentence fits that has the place to itself. */
private fun TextMeasurer.alone(first: String, firstPx: Float, width: Int, height: Int, density: Density): Fitted {
    var em = firstPx
    while (true) {
        val head = head(first, em, width, height, density)
        if (em <= firstPx * SMALLEST || head.whole) return head
        em *= SMALLER
    }
}

/**
 * The largest size at which both fit: the second gives the reason for the first, so both become smaller and neither is
 * left out.
 */
private fun TextMeasurer.two(
    first: String, second: String, firstPx: Float, secondPx: Float, width: Int, height: Int, density: Density,
): List<Fitted> {
    var share = 1f
    while (true) {
        val head = head(first, firstPx * share, width, height, density)
        val next = fitAt(secondPx * share, second, width, (height - head.lines.size.height).coerceAtLeast(0), density, FontWeight.Medium)
        if (share <= SMALLEST || head.whole && next.whole) return listOf(head, next)
        share *= SMALLER
    }
}

/** Splits a text at the end of the last line that fits [room], if that leaves at least two lines before it. */
internal fun TextMeasurer.split(text: String, em: Float, width: Double, density: Density, weight: FontWeight, room: Double): Pair<String, String>? {
    val most = width.toInt().coerceAtLeast(1)
    val lines = measure(text.withUnits(), style(em, density, weight, TextAlign.Start), constraints = Constraints(minWidth = most, maxWidth = most))
    val fit = (0 until lines.lineCount).count { lines.getLineBottom(it) <= room }
    if (fit < 2 || fit >= lines.lineCount) return null
    val end = lines.getLineEnd(fit - 1)
    return text.take(end).trimEnd() to text.drop(end).trimStart()
}

/** The words of a key: its label above, and a smaller line that has what the label leaves of the height. */
internal fun TextMeasurer.onKey(face: String, sub: String?, labelPx: Float, subPx: Float, width: Int, height: Int, density: Density, mm: Float): List<Fitted> {
    fun fit(text: String, em: Float, high: Int, weight: FontWeight) = fit(text, em, width, high, density, weight, TextAlign.Center)
    if (sub == null) return listOf(fit(face, labelPx, height, FontWeight.Bold))
    val above = fit(face, labelPx, (height * LABEL_SHARE).toInt(), FontWeight.Bold)
    val below = height - (height * LABEL_SHARE).toInt()
    val line = fit(sub, subPx, below, FontWeight.Medium)
    if (line.whole && line.em == subPx) return listOf(above, line)
    // It grows up to the label, and is never smaller than at 100 %.
    val usual = subPx.coerceAtMost(subMm().toFloat() * mm)
    fun beside(above: Fitted): Fitted {
        val room = (height - above.lines.size.height).coerceAtLeast(below)
        val sizes = listOf(subPx.coerceAtMost((above.em * SUB_OF_LABEL).coerceAtLeast(usual)), usual)
        return sizes.map { fit(sub, it, room, FontWeight.Medium) }.maxBy { it.em }
    }
    var (label, small) = above to beside(above)
    // A large label gives up size before the smaller line does.
    while (small.em < usual && label.em * SMALLER * SUB_OF_LABEL > usual) {
        label = fit(face, label.em * SMALLER, (height * LABEL_SHARE).toInt(), FontWeight.Bold)
        small = beside(label)
    }
    return listOf(label, small)
}

/** Size of the smaller line of a key relative to its label at the most. */
private const val SUB_OF_LABEL = 0.9f

/** Share of a key's height for its label at the most, if there is a smaller line below. */
internal const val LABEL_SHARE = 0.6f

/** The largest step from [em] down at which it [fits]; the smallest step if it never does. */
internal inline fun largestThatFits(em: Float, fits: (Float) -> Boolean): Float {
    var size = em
    while (size > em * SMALLEST && !fits(size)) size *= SMALLER
    return size
}

/**
 * Of the sizes up to [em], the one at which texts are drawn largest: [share] is the available part of the height that
 * they need. Larger letters need more lines, and a squeezed text is drawn smaller.
 */
internal inline fun largestDrawn(em: Float, share: (Float) -> Double): Float {
    var (best, drawn) = em to 0.0
    var size = em
    while (size >= em * SMALLEST) {
        val there = size * share(size).coerceAtMost(1.0)
        if (there > drawn * 1.001) {
            best = size
            drawn = there
        }
        size *= SMALLER
    }
    return best
}
