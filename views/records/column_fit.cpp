#include "views/records/column_fit.h"

#include "models/items/record_model.h"
#include "views/theme/theme_hub.h"

#include <QEvent>
#include <QHeaderView>
#include <QTableView>

#include <algorithm>

namespace rickyard::views {

namespace {

int sum(const QVector<int> &widths)
{
    int all = 0;
    for (int width : widths)
        all += width;
    return all;
}

constexpr int kLeastWords = 150; // pixels at 100 %: enough to tell one name from another
constexpr int kRowsLookedAt = 20;

// Numbers, days and times, by what the column is sorted by.
bool holdsFigures(const QAbstractItemModel &model, int column)
{
    for (int row = 0; row < std::min(model.rowCount(), kRowsLookedAt); ++row) {
        const QVariant sorted = model.data(model.index(row, column), items::SortRole);
        if (sorted.isValid() && sorted.userType() != QMetaType::QString)
            return true;
    }
    return false;
}

QVector<int> cappedAt(const QVector<ColumnWish> &wishes, int cap)
{
    QVector<int> widths;
    for (const ColumnWish &wish : wishes)
        widths << std::max(wish.least, std::min(wish.wanted, cap));
    return widths;
}

} // namespace

QVector<int> fittedWidths(const QVector<ColumnWish> &wishes, int room, bool mayLeaveOff)
{
    qsizetype kept = wishes.size();
    const auto leastOf = [&wishes](qsizetype count) {
        return sum(cappedAt(wishes.first(count), 0));
    };
    while (mayLeaveOff && kept > 1 && leastOf(kept) > room)
        --kept;
    const QVector<ColumnWish> some = wishes.first(kept);
    int low = 0;
    int high = 0;
    for (const ColumnWish &wish : some)
        high = std::max(high, wish.wanted);
    while (low < high) { // the greatest cap that fits
        const int middle = (low + high + 1) / 2;
        if (sum(cappedAt(some, middle)) <= room)
            low = middle;
        else
            high = middle - 1;
    }
    QVector<int> widths = cappedAt(some, low);
    if (!widths.isEmpty())
        widths.first() += std::max(0, room - sum(widths));
    widths.resize(wishes.size());
    return widths;
}

ColumnFit::ColumnFit(QTableView *view, bool leaveOff)
    : QObject(view), m_view(view), m_room(view->viewport()), m_leaveOff(leaveOff)
{
    QHeaderView *header = view->horizontalHeader();
    header->setSectionResizeMode(QHeaderView::Interactive);
    header->setStretchLastSection(false);
    m_room->installEventFilter(this);
    header->viewport()->installEventFilter(this);
    connect(header, &QHeaderView::sectionResized, this, &ColumnFit::touched);
    connect(header, &QHeaderView::sectionMoved, this, &ColumnFit::touched);
    onTheme(view, [this] { measureAnew(); });
}

void ColumnFit::setShown(const QVector<int> &columns)
{
    m_shown = columns;
    m_wishes.clear();
}

void ColumnFit::measureAnew()
{
    m_wishes.clear();
    fit();
}

void ColumnFit::stop()
{
    m_running = false;
}

void ColumnFit::start()
{
    QHeaderView *header = m_view->horizontalHeader();
    for (int column = 0; column < header->count(); ++column)
        header->moveSection(header->visualIndex(column), column);
    m_running = true;
    measureAnew();
}

void ColumnFit::touched()
{
    if (!m_pressed || !m_running)
        return;
    m_running = false;
    Q_EMIT taken();
}

ColumnWish ColumnFit::wishOf(int column) const
{
    const Theme &look = theme(m_view);
    const int head = m_view->horizontalHeader()->sectionSizeHint(column);
    const QAbstractItemView &cells = *m_view; // QTableView hides it
    const int words = cells.sizeHintForColumn(column) + look.space(3);
    ColumnWish wish;
    wish.wanted = std::max(head, std::min(words, look.px(m_widest)));
    wish.least = holdsFigures(*m_view->model(), column)
                     ? wish.wanted
                     : std::min(wish.wanted, look.px(kLeastWords));
    return wish;
}

void ColumnFit::fit()
{
    if (!m_running || !m_view->isVisible() || m_view->model()->rowCount() == 0)
        return;
    if (m_wishes.isEmpty())
        for (int column : std::as_const(m_shown))
            m_wishes << wishOf(column);
    const QVector<int> widths = fittedWidths(m_wishes, m_view->viewport()->width(), m_leaveOff);
    for (qsizetype i = 0; i < widths.size(); ++i) {
        m_view->setColumnHidden(m_shown.at(i), widths.at(i) == 0);
        if (widths.at(i) > 0)
            m_view->setColumnWidth(m_shown.at(i), widths.at(i));
    }
}

bool ColumnFit::eventFilter(QObject *watched, QEvent *event)
{
    // Events come even while the view is taken down: by its address alone, nothing is asked of it.
    if (watched == m_room) {
        if (event->type() == QEvent::Resize || event->type() == QEvent::Show)
            fit();
    } else if (event->type() == QEvent::MouseButtonPress) {
        m_pressed = true;
    } else if (event->type() == QEvent::MouseButtonRelease) {
        m_pressed = false;
    }
    return QObject::eventFilter(watched, event);
}

} // namespace rickyard::views
