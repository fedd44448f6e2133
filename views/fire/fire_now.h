// The fires that burn, one panel each, and the panel that lights the next.
#pragma once

#include "views/page.h"

#include <QTimer>

class QButtonGroup;
class QScrollArea;
class QStackedWidget;

namespace rickyard::views {

class CautionNote;
class EmptyState;
class FeedNotice;
class FlowLayout;
class LightPanel;
class NoticeBar;
class RunPanel;

class FireNow : public QWidget
{
    Q_OBJECT

public:
    explicit FireNow(PageContext &context, QWidget *parent = nullptr);
    bool showCook(domain::RecordId cook); // false when it does not burn
    void showLighting();
    [[nodiscard]] RunPanel *currentRun() const;
    [[nodiscard]] FeedNotice &feedNotice() { return *m_feedNotice; }
    [[nodiscard]] int burning() const { return static_cast<int>(m_runs.size()); }

Q_SIGNALS:
    void burningChanged(int count);

protected:
    void showEvent(QShowEvent *event) override;

private:
    void build();
    void refresh();
    void rebuildRow();
    void showIndex(int index); // of the row; the last one is the lighting
    void nextRun();
    void afterFinish(domain::RecordId cook);
    QScrollArea *scrolled(QWidget *content);

    PageContext &m_context;
    QVector<RunPanel *> m_runs;
    QWidget *m_row = nullptr;
    FlowLayout *m_rowFlow = nullptr;
    QButtonGroup *m_choices = nullptr;
    QStackedWidget *m_stack = nullptr;
    LightPanel *m_light = nullptr;
    QScrollArea *m_lightArea = nullptr;
    EmptyState *m_empty = nullptr;
    NoticeBar *m_notice = nullptr;
    FeedNotice *m_feedNotice = nullptr;
    CautionNote *m_ash = nullptr;
    QTimer m_second;
};

} // namespace rickyard::views
