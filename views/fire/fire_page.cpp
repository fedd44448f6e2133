#include "views/fire/fire_page.h"

#include "views/fire/cook_detail.h"
#include "views/fire/fire_now.h"
#include "views/records/record_list.h"
#include "views/theme/icons.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/page_header.h"
#include "views/widgets/section_tabs.h"

#include <QPushButton>
#include <QSettings>
#include <QVBoxLayout>

namespace rickyard::views {

using domain::RecordId;
using domain::TableId;

FirePage::FirePage(PageContext &context, QWidget *parent) : Page(context, parent)
{
    setAutoFillBackground(true); // its own ground, for the night
    build();
    showCount(m_now->burning());
}

void FirePage::build()
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(look.space(6), look.space(5), look.space(6), look.space(5));
    column->setSpacing(look.space(4));
    m_header = new PageHeader(tr("Fire"), QString(), this);
    m_night = new QPushButton(icon(QStringLiteral("moon")), tr("Night"), this);
    m_night->setCheckable(true);
    m_night->setAccessibleName(tr("Night view of this page"));
    m_night->setToolTip(tr("A dim page for eyes used to the dark"));
    connect(m_night, &QPushButton::toggled, this, &FirePage::setNight);
    m_header->addAction(m_night);
    column->addWidget(m_header);

    m_sections = new SectionTabs(this);
    m_now = new FireNow(context(), this);
    m_sections->addSection(tr("Now"), m_now);
    const std::pair<TableId, QString> lists[] = {{TableId::Cook, tr("Log of cooks")},
                                                 {TableId::Feed, tr("Feeds")},
                                                 {TableId::CookTemperature, tr("Temperatures")},
                                                 {TableId::CookNote, tr("Notes")},
                                                 {TableId::Trace, tr("Traces")}};
    for (const auto &[table, name] : lists) {
        auto *holder = new QWidget(this);
        (new QVBoxLayout(holder))->setContentsMargins(0, 0, 0, 0);
        m_sections->addSection(name, holder);
        m_lists.append({table, holder, nullptr});
    }
    connect(m_sections, &SectionTabs::currentChanged, this, &FirePage::followSection);
    connect(m_now, &FireNow::burningChanged, this, &FirePage::showCount);
    column->addWidget(m_sections, 1);
    if (context().settings.value(QStringLiteral("fire/night"), false).toBool())
        m_night->setChecked(true);
}

void FirePage::setNight(bool night)
{
    m_night->setChecked(night);
    context().settings.setValue(QStringLiteral("fire/night"), night);
    if (ThemeHub *hub = ThemeHub::of(this))
        hub->setScope(this, night ? Mode::Night : Mode::System);
}

void FirePage::showCount(int burning)
{
    m_header->setSubtitle(burning == 0   ? tr("No fire burns")
                          : burning == 1 ? tr("1 fire burns")
                                         : tr("%1 fires burn").arg(burning));
    m_sections->setFigure(0, burning == 0 ? QString() : QString::number(burning));
}

void FirePage::followSection(int index)
{
    if (index > 0)
        list(m_lists.at(index - 1).table);
}

RecordList *FirePage::list(TableId table)
{
    for (Section &section : m_lists) {
        if (section.table != table)
            continue;
        if (section.list == nullptr) {
            section.list = makeList(table);
            section.holder->layout()->addWidget(section.list);
        }
        return section.list;
    }
    return nullptr;
}

RecordList *FirePage::makeList(TableId table)
{
    QString empty = tr("They come with each cook: light a pit on Now.");
    QString iconName = QStringLiteral("fire");
    QString sortKey = QStringLiteral("time");
    if (table == TableId::Cook) {
        empty = tr("Light a pit on Now, or add a past cook with its times.");
        sortKey = QStringLiteral("lit");
    } else if (table == TableId::Trace) {
        empty = tr("A probe's log becomes one trace of its cook: choose the cook in the log of "
                   "cooks and import it there, or drop the file on it.");
        sortKey = QStringLiteral("start");
        iconName = QStringLiteral("chart");
    } else if (table == TableId::CookTemperature) {
        iconName = QStringLiteral("temperature");
    } else if (table == TableId::CookNote) {
        iconName = QStringLiteral("note");
    }
    auto *made = new RecordList(context(), table, iconName, empty, this);
    made->sortBy(sortKey, Qt::DescendingOrder);
    if (table == TableId::Cook) {
        auto *detail = new CookDetail(context(), made);
        made->setTallDetail(detail);
        connect(made, &RecordList::chosenChanged, detail, &CookDetail::setCook);
    }
    return made;
}

bool FirePage::show(domain::Link link)
{
    if (link.table == TableId::Cook && link.id != 0 && m_now->showCook(link.id)) {
        m_sections->setCurrent(0);
        return true;
    }
    for (int i = 0; i < m_lists.size(); ++i) {
        if (m_lists.at(i).table != link.table)
            continue;
        m_sections->setCurrent(i + 1);
        return link.id == 0 || list(link.table)->show(link.id);
    }
    return false;
}

void FirePage::addNew()
{
    const int at = m_sections->current();
    if (at > 0) {
        list(m_lists.at(at - 1).table)->addNew();
        return;
    }
    m_now->showLighting();
}

void FirePage::startSearch()
{
    if (m_sections->current() == 0)
        m_sections->setCurrent(1);
    list(m_lists.at(m_sections->current() - 1).table)->startSearch();
}

} // namespace rickyard::views
