#include "views/fire/fire_page.h"

#include "models/items/record_model.h"
#include "views/fire/compare_view.h"
#include "views/fire/cook_detail.h"
#include "views/fire/feed_notice.h"
#include "views/fire/fire_now.h"
#include "views/fire/log_charts.h"
#include "views/records/record_list.h"
#include "views/theme/icons.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/page_header.h"
#include "views/widgets/section_tabs.h"

#include <QActionGroup>
#include <QHeaderView>
#include <QMenu>
#include <QPushButton>
#include <QSettings>
#include <QTableView>
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
    m_now = new FireNow(context(), this);
    m_header->addAction(makeBell());
    m_header->addAction(m_night);
    column->addWidget(m_header);

    m_sections = new SectionTabs(this);
    m_sections->addSection(tr("Now"), m_now);
    addLists({{TableId::Cook, tr("Log of cooks")}});
    m_chartsHolder = addHolder(tr("Charts"), m_chartsIndex);
    m_compareHolder = addHolder(tr("Compare"), m_compareIndex);
    addLists({{TableId::Feed, tr("Feeds")},
              {TableId::CookTemperature, tr("Temperatures")},
              {TableId::CookNote, tr("Notes")},
              {TableId::Trace, tr("Traces")}});
    connect(m_sections, &SectionTabs::currentChanged, this, &FirePage::followSection);
    connect(m_now, &FireNow::burningChanged, this, &FirePage::showCount);
    column->addWidget(m_sections, 1);
    if (context().settings.value(QStringLiteral("fire/night"), false).toBool())
        m_night->setChecked(true);
}

// What happens when a feed is due: a message and a sound, the message alone, or nothing.
QPushButton *FirePage::makeBell()
{
    auto *bell = new QPushButton(this);
    bell->setAccessibleName(tr("When a feed is due"));
    auto *menu = new QMenu(bell);
    auto *group = new QActionGroup(menu);
    using Level = FeedNotice::Level;
    const std::pair<Level, QString> levels[] = {{Level::Sound, tr("Message and a soft sound")},
                                                {Level::Notice, tr("Message only")},
                                                {Level::Silent, tr("Silent")}};
    FeedNotice &notice = m_now->feedNotice();
    for (const auto &[level, name] : levels) {
        QAction *action = menu->addAction(name);
        action->setCheckable(true);
        action->setChecked(notice.level() == level);
        group->addAction(action);
        connect(action, &QAction::triggered, &notice,
                [&notice, level = level] { notice.setLevel(level); });
    }
    bell->setMenu(menu);
    const auto follow = [bell, &notice] {
        const bool silent = notice.level() == Level::Silent;
        bell->setIcon(icon(silent ? QStringLiteral("bell-off") : QStringLiteral("bell")));
        bell->setText(silent ? tr("Silent") : tr("Feed notice"));
        bell->setToolTip(silent ? tr("Nothing is said when a feed is due")
                                : tr("Says on the desktop when a feed is due"));
    };
    follow();
    connect(&notice, &FeedNotice::levelChanged, bell, follow);
    return bell;
}

QWidget *FirePage::addHolder(const QString &name, int &index)
{
    auto *holder = new QWidget(this);
    (new QVBoxLayout(holder))->setContentsMargins(0, 0, 0, 0);
    index = m_sections->addSection(name, holder);
    return holder;
}

void FirePage::addLists(const QVector<QPair<TableId, QString>> &lists)
{
    for (const auto &[table, name] : lists) {
        int index = 0;
        QWidget *holder = addHolder(name, index);
        m_lists.append({table, holder, nullptr, index});
    }
}

LogCharts &FirePage::charts()
{
    if (m_charts == nullptr) {
        m_charts = new LogCharts(context(), m_chartsHolder);
        m_chartsHolder->layout()->addWidget(m_charts);
    }
    return *m_charts;
}

CompareView &FirePage::comparison()
{
    if (m_comparison == nullptr) {
        m_comparison = new CompareView(context(), m_compareHolder);
        m_compareHolder->layout()->addWidget(m_comparison);
    }
    return *m_comparison;
}

// Of two the earlier stands first.
void FirePage::compare(qint64 first, qint64 second)
{
    const domain::Books &books = context().books();
    if (second != 0 && books.cooks.value(second).lit < books.cooks.value(first).lit)
        std::swap(first, second);
    comparison().compare(first, second);
    m_sections->setCurrent(m_compareIndex);
}

const FirePage::Section *FirePage::sectionAt(int index) const
{
    for (const Section &section : m_lists)
        if (section.index == index)
            return &section;
    return nullptr;
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
    if (const Section *section = sectionAt(index))
        list(section->table);
    else if (index == m_chartsIndex)
        charts();
    else if (index == m_compareIndex)
        comparison();
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
        pairCooks(*made, *detail);
    }
    return made;
}

// The cook's page compares with the other one that is chosen beside it in the list.
void FirePage::pairCooks(RecordList &list, CookDetail &detail)
{
    const QTableView *view = &list.view();
    connect(view->selectionModel(), &QItemSelectionModel::selectionChanged, &detail,
            [view, &detail] {
                QVector<RecordId> ids;
                const QModelIndexList rows =
                    view->selectionModel()->selectedRows(view->horizontalHeader()->logicalIndex(0));
                for (const QModelIndex &index : rows)
                    ids << index.data(items::RecordIdRole).toLongLong();
                detail.setPair(ids.size() == 2 ? ids.first() : 0, ids.size() == 2 ? ids.last() : 0);
            });
    connect(&detail, &CookDetail::compareAsked, this, &FirePage::compare);
}

bool FirePage::show(domain::Link link)
{
    if (link.table == TableId::Cook && link.id != 0 && m_now->showCook(link.id)) {
        m_sections->setCurrent(0);
        return true;
    }
    for (const Section &section : std::as_const(m_lists)) {
        if (section.table != link.table)
            continue;
        m_sections->setCurrent(section.index);
        return link.id == 0 || list(link.table)->show(link.id);
    }
    return false;
}

void FirePage::addNew()
{
    if (const Section *section = sectionAt(m_sections->current())) {
        list(section->table)->addNew();
        return;
    }
    m_sections->setCurrent(0);
    m_now->showLighting();
}

void FirePage::startSearch()
{
    const Section *section = sectionAt(m_sections->current());
    const TableId table = section == nullptr ? TableId::Cook : section->table;
    if (section == nullptr)
        m_sections->setCurrent(m_lists.first().index);
    list(table)->startSearch();
}

} // namespace rickyard::views
