#include "views/events/later_question.h"

#include "models/workspace/commands/event_verbs.h"
#include "views/widgets/inline_question.h"

#include <QVBoxLayout>

namespace rickyard::views {

using namespace rickyard::domain;

LaterQuestion::LaterQuestion(PageContext &pageContext, QWidget *parent)
    : QWidget(parent), m_context(pageContext),
      m_question(new InlineQuestion(tr("This and the later ones"), tr("This one only"), this))
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(m_question);
    connect(m_question, &InlineQuestion::wentOn, this, &LaterQuestion::changeLater);
    connect(m_question, &InlineQuestion::wentBack, this, &LaterQuestion::dismiss);
    hide();
}

void LaterQuestion::askAbout(const std::optional<Row> &before, const Row &after)
{
    dismiss();
    const LaterChange change = sameOnLater(m_context.books(), before, after);
    bool differs = false;
    for (const Row &row : change.rows)
        differs = differs || row.id == 0 || rowOf(m_context.books(), row.table, row.id) != row;
    if (!differs)
        return;
    m_before = before;
    m_after = after;
    const auto count = change.rows.size();
    const QString others = count == 1 ? tr("1 later one") : tr("%1 later ones").arg(count);
    QString words = before ? tr("Saved for this one. Change %1 of the series in the same way?")
                           : tr("Planned for this one. Plan it for %1 of the series as well?");
    words = words.arg(others);
    if (change.without > 0)
        words += change.without == 1
                     ? tr(" 1 more has no such cook and stays as it is.")
                     : tr(" %1 more have no such cook and stay as they are.").arg(change.without);
    show();
    m_question->ask(words);
}

void LaterQuestion::changeLater()
{
    const auto done = commands::changeLater(m_context.verbs, m_before, m_after);
    dismiss();
    if (!done)
        m_context.refuse(done.problems());
    else
        m_context.say(
            done.value() == 1
                ? tr("1 later one changed too. Undo takes that back alone.")
                : tr("%1 later ones changed too. Undo takes that back alone.").arg(done.value()));
}

void LaterQuestion::dismiss()
{
    m_question->dismiss();
    hide();
}

QString LaterQuestion::question() const
{
    return isHidden() ? QString() : m_question->question();
}

} // namespace rickyard::views
