#include "views/fire/marks_bar.h"

#include "views/fire/confirm_button.h"
#include "views/fire/fire_words.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/flow_layout.h"
#include "views/widgets/text_label.h"

#include <QGridLayout>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

namespace rickyard::views {

using commands::Verbs;
using domain::Instant;
using domain::NoteKind;
using domain::TableId;

namespace {

// A button's "&" would be taken for a shortcut's mark.
QString plain(QString text)
{
    return text.replace(QLatin1Char('&'), QStringLiteral("&&"));
}

} // namespace

MarksBar::MarksBar(PageContext &context, domain::RecordId cook, QWidget *parent)
    : QWidget(parent), m_context(context), m_cook(cook)
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(theme(this).space(3));
    buildMarks(column);
    buildNotes(column);
    refresh();
}

void MarksBar::buildMarks(QVBoxLayout *column)
{
    const QStringList names = {tr("At temperature"), tr("Food on"), tr("Food off"), tr("Fire out")};
    auto *grid = new QGridLayout;
    grid->setSpacing(theme(this).space(2));
    for (int i = 0; i < names.size(); ++i) {
        auto *button = new ConfirmButton(names.at(i), this);
        grid->addWidget(button, i / 2, i % 2);
        connect(button, &ConfirmButton::confirmed, this,
                [this, i, name = names.at(i)] { mark(static_cast<Verbs::Mark>(i), name); });
        m_marks << button;
    }
    column->addLayout(grid);
}

void MarksBar::buildNotes(QVBoxLayout *column)
{
    const Theme &look = theme(this);
    column->addWidget(new TextLabel(tr("Note with one tap"), TextStyle::Label, Role::InkMuted));
    auto *holder = new QWidget(this);
    auto *flow = new FlowLayout(holder);
    const auto &spec = domain::specOf(TableId::CookNote);
    const auto &choices = spec.fields.at(spec.indexOf(QStringLiteral("kind"))).choices;
    for (int i = 0; i < choices.size(); ++i) {
        const auto kind = static_cast<NoteKind>(i);
        if (kind == NoteKind::Remark || kind == NoteKind::HandOver)
            continue;
        const QString label = choices.at(i).label;
        auto *button = new QPushButton(plain(label), holder);
        button->setMinimumHeight(look.px(44));
        button->setAccessibleName(tr("Note: %1").arg(label));
        button->setEnabled(!m_context.readOnly());
        connect(button, &QPushButton::clicked, this,
                [this, kind, label] { note(kind, label, QString()); });
        flow->addWidget(button);
    }
    column->addWidget(holder);
    m_text = new QLineEdit(this);
    m_text->setPlaceholderText(tr("Or write a note and press Enter"));
    m_text->setAccessibleName(tr("Note in words"));
    m_text->setMinimumHeight(look.px(44));
    m_text->setEnabled(!m_context.readOnly());
    connect(m_text, &QLineEdit::returnPressed, this, [this] {
        const QString text = m_text->text().trimmed();
        if (!text.isEmpty())
            note(NoteKind::Remark, tr("Note"), text);
    });
    column->addWidget(m_text);
}

void MarksBar::refresh()
{
    const domain::Cook cook = m_context.books().cooks.value(m_cook);
    const FireWords words(m_context.books());
    const std::optional<Instant> times[] = {cook.atTemperature, cook.foodOn, cook.foodOff,
                                            cook.fireOut};
    const QStringList names = {tr("At temperature"), tr("Food on"), tr("Food off"), tr("Fire out")};
    for (int i = 0; i < m_marks.size(); ++i) {
        const auto &time = times[i];
        ConfirmButton *button = m_marks.at(i);
        button->setEnabled(!m_context.readOnly());
        button->setLabel(time ? tr("%1, %2").arg(names.at(i), words.clock(*time)) : names.at(i));
        // The end of a cook, and a time that is already there, are asked about once more.
        button->setQuestion(i == static_cast<int>(Verbs::Mark::FireOut) ? tr("Finish this cook?")
                            : time                                      ? tr("Set it to now?")
                                                                        : QString());
    }
}

void MarksBar::mark(Verbs::Mark mark, const QString &name)
{
    const Instant now = m_context.verbs.now();
    const auto set = m_context.verbs.mark(m_cook, mark, now);
    if (!set) {
        Q_EMIT refused(set.message());
        return;
    }
    if (mark == Verbs::Mark::FireOut) {
        Q_EMIT finished();
        return;
    }
    Q_EMIT done(tr("%1 at %2.").arg(name, FireWords(m_context.books()).clock(now)), {});
}

void MarksBar::note(NoteKind kind, const QString &name, const QString &text)
{
    const auto noted = m_context.verbs.note(m_cook, kind, text);
    if (!noted) {
        Q_EMIT refused(noted.message());
        return;
    }
    if (!text.isEmpty())
        m_text->clear();
    Q_EMIT done(tr("Noted at %1: %2")
                    .arg(FireWords(m_context.books()).clock(m_context.verbs.now()),
                         text.isEmpty() ? name : text),
                {TableId::CookNote, noted.value()});
}

} // namespace rickyard::views
