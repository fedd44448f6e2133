#include "views/widgets/sentence_label.h"

#include "views/theme/number_style.h"
#include "views/theme/theme_hub.h"

#include <QEvent>
#include <QPainter>

#include <cmath>

namespace rickyard::views {

SentenceLabel::SentenceLabel(QWidget *parent) : QWidget(parent)
{
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Preferred);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    setStyles(TextStyle::Heading, TextStyle::NumeralLarge);
}

void SentenceLabel::setParts(const QVector<SentencePart> &parts)
{
    parts_ = parts;
    for (SentencePart &part : parts_)
        part.text = trueMinus(part.text);
    setAccessibleName(plainText());
    updateGeometry();
    update();
}

void SentenceLabel::setStyles(TextStyle words, TextStyle figures)
{
    wordStyle_ = words;
    figureStyle_ = figures;
    updateGeometry();
    update();
}

QString SentenceLabel::plainText() const
{
    QString text;
    for (const SentencePart &part : parts_)
        text += part.text;
    return text.simplified();
}

QFont SentenceLabel::fontOf(const Word &word) const
{
    QFont font = theme(this).font(word.emphasised ? figureStyle_ : wordStyle_);
    if (!word.emphasised)
        font.setWeight(QFont::Normal);
    return font;
}

QVector<SentenceLabel::Word> SentenceLabel::words() const
{
    QVector<Word> all;
    bool space = false;
    for (const SentencePart &part : parts_) {
        QString run;
        const auto flush = [&] {
            if (!run.isEmpty()) {
                all.append({run, part.emphasised, part.role, space, {}});
                space = false;
            }
            run.clear();
        };
        // Only breaking spaces part words: a figure and its unit hold together by U+2009.
        // A short figure ("Thu 19 Nov") stays on one line too.
        constexpr qsizetype longestWhole = 14;
        const QString trimmed = part.text.trimmed();
        const bool whole = part.emphasised && trimmed.size() <= longestWhole;
        const qsizetype inside = whole ? part.text.indexOf(trimmed) : 0;
        const qsizetype end = whole ? inside + trimmed.size() : 0;
        for (qsizetype i = 0; i < part.text.size(); ++i) {
            const QChar c = part.text.at(i);
            const bool held = i >= inside && i < end;
            if (!held && (c == u' ' || c == u'\n')) {
                flush();
                space = true;
            } else {
                run += c;
            }
        }
        flush();
    }
    return all;
}

double SentenceLabel::place(QVector<Word> &words, double width) const
{
    const QFontMetricsF plain(theme(this).font(wordStyle_));
    const QFontMetricsF large(theme(this).font(figureStyle_));
    // Two figures part by a large space, a figure and a word by something between.
    const auto gapBefore = [&](qsizetype index) {
        const bool here = words.at(index).emphasised;
        const bool before = words.at(index - 1).emphasised;
        const double small = plain.horizontalAdvance(u' ');
        return here && before   ? large.horizontalAdvance(u' ')
               : here || before ? small * 1.5
                                : small;
    };
    const double leading = theme(this).px(4);
    double top = 0.0;
    qsizetype first = 0;
    while (first < words.size()) {
        double x = 0.0;
        double ascent = 0.0;
        double descent = 0.0;
        qsizetype next = first;
        while (next < words.size()) {
            // A word glued to the one before (a full stop after a figure) moves with it.
            qsizetype end = next + 1;
            while (end < words.size() && !words.at(end).spaceBefore)
                ++end;
            double run = 0.0;
            for (qsizetype i = next; i < end; ++i)
                run += QFontMetricsF(fontOf(words.at(i))).horizontalAdvance(words.at(i).text);
            const double start = next == first ? 0.0 : x + gapBefore(next);
            if (next != first && start + run > width)
                break;
            x = start;
            for (qsizetype i = next; i < end; ++i) {
                const QFontMetricsF metrics(fontOf(words.at(i)));
                words[i].baseline.setX(x);
                x += metrics.horizontalAdvance(words.at(i).text);
                ascent = std::max(ascent, metrics.ascent());
                descent = std::max(descent, metrics.descent());
            }
            next = end;
        }
        for (qsizetype i = first; i < next; ++i)
            words[i].baseline.setY(top + ascent);
        top += ascent + descent + leading;
        first = next;
    }
    return std::max(0.0, top - leading);
}

int SentenceLabel::heightForWidth(int width) const
{
    QVector<Word> all = words();
    // One more: a glyph on a fractional baseline may shade the row below its descent.
    return static_cast<int>(std::ceil(place(all, width))) + 1;
}

QSize SentenceLabel::sizeHint() const
{
    const int width = theme(this).px(420);
    return {width, heightForWidth(width)};
}

QSize SentenceLabel::minimumSizeHint() const
{
    double widest = 0.0;
    const QVector<Word> all = words();
    for (const Word &word : all)
        widest = std::max(widest, QFontMetricsF(fontOf(word)).horizontalAdvance(word.text));
    return {static_cast<int>(std::ceil(widest)),
            static_cast<int>(std::ceil(QFontMetricsF(theme(this).font(figureStyle_)).height()))};
}

void SentenceLabel::changeEvent(QEvent *event)
{
    if (event->type() == QEvent::StyleChange || event->type() == QEvent::FontChange)
        updateGeometry();
    QWidget::changeEvent(event);
}

void SentenceLabel::paintEvent(QPaintEvent *)
{
    const Theme &look = theme(this);
    QPainter painter(this);
    QVector<Word> all = words();
    place(all, width());
    for (const Word &word : all) {
        painter.setFont(fontOf(word));
        painter.setPen(look.color(word.emphasised ? word.role : Role::Ink));
        painter.drawText(word.baseline, word.text);
    }
}

} // namespace rickyard::views
