#include "views/pits/pits_page.h"

#include "models/domain/fire/fuel_words.h"
#include "views/pits/cost_table.h"
#include "views/pits/fuel_table.h"
#include "views/pits/pit_overview.h"
#include "views/records/record_list.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/empty_state.h"
#include "views/widgets/page_header.h"
#include "views/widgets/search_field.h"
#include "views/widgets/section_tabs.h"

#include <QPushButton>
#include <QScrollArea>
#include <QStackedWidget>
#include <QVBoxLayout>

namespace rickyard::views {

using domain::TableId;

namespace {
constexpr int kBeforeLists = 2; // sections: the overview, the costs
} // namespace

PitsPage::PitsPage(PageContext &context, QWidget *parent) : Page(context, parent)
{
    build();
    followCount();
    connect(&context.verbs.yard(), &workspace::Workspace::changed, this,
            [this](const workspace::Changes &changes) {
                if (changes.touches(TableId::Pit))
                    followCount();
            });
}

void PitsPage::build()
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(look.space(6), look.space(5), look.space(6), look.space(5));
    column->setSpacing(look.space(4));
    m_header = new PageHeader(tr("Pits"), QString(), this);
    column->addWidget(m_header);
    m_sections = new SectionTabs(this);
    m_first = new QStackedWidget(this);
    m_empty = new EmptyState(QStringLiteral("pits"), tr("No pit yet"),
                             tr("Add your first pit with its measures. After a few finished "
                                "cooks this page says whether it burns more than it should."),
                             m_first);
    m_empty->setAction(tr("Add a pit"));
    m_empty->actionButton()->setAccessibleName(tr("Add a pit"));
    m_empty->actionButton()->setEnabled(!context().readOnly());
    connect(m_empty, &EmptyState::triggered, this, &PitsPage::addNew);
    m_first->addWidget(m_empty);
    auto *scroll = new QScrollArea(m_first);
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setFocusPolicy(Qt::NoFocus);
    m_overview = new PitOverview(context());
    scroll->setWidget(m_overview);
    scroll->viewport()->setAutoFillBackground(false);
    m_overview->setAutoFillBackground(false);
    m_first->addWidget(scroll);
    m_sections->addSection(tr("Overview"), m_first);
    m_costs = new CostTable(context(), this);
    m_sections->addSection(tr("Compare and cost"), m_costs);
    const auto costs = [this] {
        if (context().answers.ready())
            m_costs->showFuel(context().answers.answers().fuel);
    };
    connect(&context().answers, &workspace::AnswersService::updated, m_costs, costs);
    costs();
    addList(TableId::Pit, tr("Pits"), QStringLiteral("pits"),
            tr("Add each pit with its measures: they give a first idea of what it takes."),
            QStringLiteral("name"));
    addList(TableId::KnownGood, tr("Known-good periods"), QStringLiteral("check"),
            tr("Declare a stretch in which a pit was in order: its norm then learns from it "
               "alone."),
            QStringLiteral("from_day"));
    addList(TableId::Finding, tr("Findings"), QStringLiteral("search"),
            tr("Write down what you find: a leak, a warped door, a worn gasket."),
            QStringLiteral("opened"));
    column->addWidget(m_sections, 1);
}

void PitsPage::addList(TableId table, const QString &name, const QString &iconName,
                       const QString &empty, const QString &sortKey)
{
    auto *made = new RecordList(context(), table, iconName, empty, this);
    made->sortBy(sortKey, table == TableId::Pit ? Qt::AscendingOrder : Qt::DescendingOrder);
    m_sections->addSection(name, made);
    m_lists.append({table, made});
}

void PitsPage::followCount()
{
    int used = 0;
    int retired = 0;
    for (const domain::Pit &pit : context().books().pits)
        ++(pit.retired ? retired : used);
    QString text = domain::countOf(used, tr("pit"));
    if (retired > 0)
        text += tr(", %1 retired").arg(retired);
    m_header->setSubtitle(used + retired == 0 ? QString() : text);
    m_first->setCurrentIndex(used + retired == 0 ? 0 : 1);
}

RecordList *PitsPage::list(TableId table) const
{
    for (const Section &section : m_lists)
        if (section.table == table)
            return section.list;
    return nullptr;
}

bool PitsPage::show(domain::Link link)
{
    for (int i = 0; i < m_lists.size(); ++i) {
        if (m_lists.at(i).table != link.table)
            continue;
        m_sections->setCurrent(i + kBeforeLists);
        if (link.id != 0)
            return m_lists.at(i).list->show(link.id);
        m_lists.at(i).list->addNew();
        return true;
    }
    return false;
}

void PitsPage::addNew()
{
    const int at = std::max(kBeforeLists, m_sections->current());
    m_sections->setCurrent(at);
    m_lists.at(at - kBeforeLists).list->addNew();
}

void PitsPage::startSearch()
{
    if (m_sections->current() < kBeforeLists)
        m_overview->table().search().setFocus(Qt::ShortcutFocusReason);
    else
        m_lists.at(m_sections->current() - kBeforeLists).list->startSearch();
}

} // namespace rickyard::views
