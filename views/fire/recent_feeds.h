// The last feeds of a cook, newest first, each to be mended or taken out where it stands.
#pragma once

#include "views/page.h"

class QVBoxLayout;

namespace rickyard::views {

class RecordForm;
class TextLabel;

class RecentFeeds : public QWidget
{
    Q_OBJECT

public:
    RecentFeeds(PageContext &context, domain::RecordId cook, QWidget *parent = nullptr);
    void refresh();
    void edit(domain::RecordId feed);

Q_SIGNALS:
    void removed(const QString &text);
    void refused(const QString &message);

private:
    QWidget *rowOf(const domain::Feed &feed);
    void remove(domain::RecordId feed);

    PageContext &m_context;
    domain::RecordId m_cook;
    QVBoxLayout *m_rows = nullptr;
    TextLabel *m_none = nullptr;
    RecordForm *m_form = nullptr;
};

} // namespace rickyard::views
