#include "views/pits/repair_list.h"

#include "models/domain/answers/answers.h"
#include "models/domain/fire/repairs.h"
#include "views/fire/fire_words.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/text_label.h"

#include <QVBoxLayout>

namespace rickyard::views {

using namespace rickyard::domain;

RepairList::RepairList(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context), m_lines(new QVBoxLayout(this))
{
    m_lines->setContentsMargins(0, 0, 0, 0);
    m_lines->setSpacing(theme(this).space(2));
}

void RepairList::showPit(RecordId pit)
{
    qDeleteAll(m_shown);
    m_shown.clear();
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

QString RepairList::words() const
{
    QStringList lines;
    for (const TextLabel *label : m_shown)
        lines << label->text();
    return lines.join(QLatin1Char('\n'));
}

} // namespace rickyard::views
