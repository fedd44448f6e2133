#include "views/pits/repair_list.h"

#include "models/domain/answers/answers.h"
#include "models/domain/fire/repairs.h"
#include "views/fire/fire_words.h"
#include "views/reports/paper_view.h"
#include "views/reports/service_history_paper.h"
#include "views/theme/icons.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/text_label.h"

#include <QPushButton>
#include <QVBoxLayout>

namespace rickyard::views {

using namespace rickyard::domain;

RepairList::RepairList(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context), m_lines(new QVBoxLayout),
      m_history(new QPushButton(icon(QStringLiteral("export")), tr("Service history…"), this))
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(theme(this).space(3));
    m_lines->setSpacing(theme(this).space(2));
    column->addLayout(m_lines);
    column->addWidget(m_history, 0, Qt::AlignLeft);
    connect(m_history, &QPushButton::clicked, this, &RepairList::openHistory);
}

void RepairList::showPit(RecordId pit)
{
    qDeleteAll(m_shown);
    m_shown.clear();
    m_pit = pit;
    m_history->setEnabled(pit != 0);
    m_history->setAccessibleName(
        tr("Service history of %1 on paper").arg(m_context.books().pits.value(pit).name));
    const auto add = [this](const QString &text, TextStyle style, Role role) {
        auto *label = new TextLabel(text, style, role, this);
        label->setWordWrap(true);
        m_lines->addWidget(label);
        m_shown << label;
    };
    const Books &books = m_context.books();
    const Answers &answers = m_context.answers.answers();
    const FireWords words(books);
    bool any = false;
    const auto repairs = repairsOf(books, answers.fuel, answers.asOf, wordingOf(books));
    for (const Repair &repair : repairs) {
        if (repair.pit != pit)
            continue;
        any = true;
        add(repair.sentence, TextStyle::BodyStrong, Role::Ink);
        add(tr("%1; %2 cooks before it against %3 since.")
                .arg(words.day(repair.at))
                .arg(repair.before)
                .arg(repair.after),
            TextStyle::Caption, Role::InkMuted);
    }
    if (!any)
        add(tr("Nothing mended on %1 yet. A finding that is set to mended, with the visit that did "
               "it, shows here what it saved.")
                .arg(books.pits.value(pit).name),
            TextStyle::Body, Role::InkMuted);
}

void RepairList::openHistory()
{
    PaperView view(serviceHistoryPaper(m_context.books(), m_pit, m_context.verbs.now()), this);
    view.exec();
}

QString RepairList::words() const
{
    QStringList lines;
    for (const TextLabel *label : m_shown)
        lines << label->text();
    return lines.join(QLatin1Char('\n'));
}

} // namespace rickyard::views
