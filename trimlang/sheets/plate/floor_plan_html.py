MADE_FROM = '1dec28565120319753e570c7c666117511b3865f671a05183eb3539e13e6b07a'
from jinja2.runtime import LoopContext, Macro, Markup, Namespace, TemplateNotFound, TemplateReference, TemplateRuntimeError, Undefined, escape, identity, internalcode, markup_join, missing, str_join
name = 'floor-plan.html'

def root(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    parent_template = None
    l_0_looks = l_0_strokes = l_0_texts = missing
    try:
        t_1 = environment.filters['safe']
    except KeyError:
        @internalcode
        def t_1(*unused):
            raise TemplateRuntimeError("No filter named 'safe' found.")
    pass
    parent_template = environment.get_template('parts/page.html', 'floor-plan.html')
    for name, parent_block in parent_template.blocks.items():
        context.blocks.setdefault(name, []).append(parent_block)
    l_0_looks = {'run': 'stroke-width="1.1"', 'wall': 'stroke-width="0.7"', 'opening': 'stroke-width="0.25" stroke-dasharray="0.6 0.9"', 'bare': 'stroke-width="0.35" stroke-dasharray="2.4 1"', 'jamb': 'stroke-width="0.5"', 'splice': 'stroke-width="0.5"', 'leader': 'stroke-width="0.2"', 'misclosure': 'stroke-width="0.6" stroke-dasharray="3 1.5"'}
    context.vars['looks'] = l_0_looks
    context.exported_vars.add('looks')
    def macro(l_1_lines):
        t_2 = []
        if l_1_lines is missing:
            l_1_lines = undefined("parameter 'lines' was not provided", name='lines')
        pass
        for l_2_line in l_1_lines:
            _loop_vars = {}
            pass
            t_2.extend((
                '<line class="',
                escape(environment.getattr(l_2_line, 'look')),
                '" x1="',
                escape(environment.getattr(l_2_line, 'x1')),
                '" y1="',
                escape(environment.getattr(l_2_line, 'y1')),
                '" x2="',
                escape(environment.getattr(l_2_line, 'x2')),
                '" y2="',
                escape(environment.getattr(l_2_line, 'y2')),
                '" stroke="#000" ',
                escape(t_1(context.call(environment.getattr((undefined(name='looks') if l_0_looks is missing else l_0_looks), 'get'), environment.getattr(l_2_line, 'look'), environment.getitem((undefined(name='looks') if l_0_looks is missing else l_0_looks), 'opening'), _loop_vars=_loop_vars))),
                '/>\n',
            ))
        l_2_line = missing
        return concat(t_2)
    context.exported_vars.add('strokes')
    context.vars['strokes'] = l_0_strokes = Macro(environment, macro, 'strokes', ('lines',), False, False, False, context.eval_ctx.autoescape)
    def macro(l_1_labels):
        t_3 = []
        if l_1_labels is missing:
            l_1_labels = undefined("parameter 'labels' was not provided", name='labels')
        pass
        for l_2_label in l_1_labels:
            _loop_vars = {}
            pass
            t_3.extend((
                '<text class="say ',
                escape(environment.getattr(l_2_label, 'look')),
                '" x="',
                escape(environment.getattr(l_2_label, 'x')),
                '" y="',
                escape(environment.getattr(l_2_label, 'y')),
                '" transform="rotate(',
                escape(environment.getattr(l_2_label, 'turn')),
                ' ',
                escape(environment.getattr(l_2_label, 'x')),
                ' ',
                escape(environment.getattr(l_2_label, 'y')),
                ')" text-anchor="middle" font-size="',
                escape(('3.2' if (environment.getattr(l_2_label, 'look') == 'run') else '2.4')),
                '" font-weight="',
                escape(('700' if (environment.getattr(l_2_label, 'look') == 'run') else '400')),
                '" font-family="Trim Sans, DejaVu Sans, sans-serif" fill="#000">',
                escape(environment.getattr(l_2_label, 'text')),
                '</text>\n',
            ))
        l_2_label = missing
        return concat(t_3)
    context.exported_vars.add('texts')
    context.vars['texts'] = l_0_texts = Macro(environment, macro, 'texts', ('labels',), False, False, False, context.eval_ctx.autoescape)
    yield from parent_template.root_render_func(context)

def block_kind(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    _block_vars = {}
    pass
    yield 'floor-plan'

def block_body(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    _block_vars = {}
    l_0__ = resolve('_')
    l_0_house = resolve('house')
    l_0_rooms = resolve('rooms')
    try:
        t_4 = environment.filters['float']
    except KeyError:
        @internalcode
        def t_4(*unused):
            raise TemplateRuntimeError("No filter named 'float' found.")
    try:
        t_5 = environment.filters['format']
    except KeyError:
        @internalcode
        def t_5(*unused):
            raise TemplateRuntimeError("No filter named 'format' found.")
    try:
        t_6 = environment.filters['join']
    except KeyError:
        @internalcode
        def t_6(*unused):
            raise TemplateRuntimeError("No filter named 'join' found.")
    try:
        t_7 = environment.filters['map']
    except KeyError:
        @internalcode
        def t_7(*unused):
            raise TemplateRuntimeError("No filter named 'map' found.")
    pass
    yield '<p class="how">'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'Walls in the order of the survey, turning right; a thick line carries trim. A dot is an inside corner, a square an outside corner, a ring a free end; a slanting stroke is a splice, the arrow the entrance, a dashed line bare wall, a dotted one an opening. Corners that were not measured are drawn square.', _block_vars=_block_vars))
    yield '</p>\n'
    if environment.getattr((undefined(name='house') if l_0_house is missing else l_0_house), 'groups'):
        pass
        yield '<section class="house">\n<h2>'
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'The house', _block_vars=_block_vars))
        yield '</h2>\n<p class="small">'
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'Rooms back to back at the openings that name each other. How thick the walls between them are was not measured: it is drawn at 5 in (127 mm).', _block_vars=_block_vars))
        yield '</p>\n'
        for l_1_group in environment.getattr((undefined(name='house') if l_0_house is missing else l_0_house), 'groups'):
            l_1_strokes = resolve('strokes')
            l_1_texts = resolve('texts')
            _loop_vars = {}
            pass
            yield '<figure class="group-plan">\n<svg class="floor" style="width: '
            yield escape(environment.getattr(l_1_group, 'wide'))
            yield 'mm" viewBox="0 0 '
            yield escape(environment.getattr(l_1_group, 'wide'))
            yield ' '
            yield escape(environment.getattr(l_1_group, 'tall'))
            yield '" role="img" aria-label="'
            yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'overview: {rooms}', rooms=t_6(context.eval_ctx, t_7(context, environment.getattr(l_1_group, 'rooms'), 'last'), ', '), _loop_vars=_loop_vars))
            yield '">\n'
            yield escape(context.call((undefined(name='strokes') if l_1_strokes is missing else l_1_strokes), environment.getattr(l_1_group, 'lines'), _loop_vars=_loop_vars))
            yield escape(context.call((undefined(name='texts') if l_1_texts is missing else l_1_texts), environment.getattr(l_1_group, 'labels'), _loop_vars=_loop_vars))
            yield '</svg>\n<figcaption class="small">'
            for (l_2_tag, l_2_name) in environment.getattr(l_1_group, 'rooms'):
                _loop_vars = {}
                pass
                yield '<b>'
                yield escape(l_2_tag)
                yield '</b> '
                yield escape(l_2_name)
                yield ', '
            l_2_tag = l_2_name = missing
            yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'scale {scale}', scale=environment.getattr(l_1_group, 'scale'), _loop_vars=_loop_vars))
            yield '</figcaption>\n</figure>\n'
        l_1_group = l_1_strokes = l_1_texts = missing
        if environment.getattr((undefined(name='house') if l_0_house is missing else l_0_house), 'apart'):
            pass
            yield '<p>'
            yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'Not joined by a named opening: {rooms}.', rooms=t_6(context.eval_ctx, environment.getattr((undefined(name='house') if l_0_house is missing else l_0_house), 'apart'), ', '), _block_vars=_block_vars))
            yield '</p>'
        if environment.getattr((undefined(name='house') if l_0_house is missing else l_0_house), 'across'):
            pass
            yield '<p>'
            yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'Joined, but as surveyed it would lie over another room: {rooms}.', rooms=t_6(context.eval_ctx, environment.getattr((undefined(name='house') if l_0_house is missing else l_0_house), 'across'), ', '), _block_vars=_block_vars))
            yield '</p>'
        yield '</section>\n'
    for l_1_room in (undefined(name='rooms') if l_0_rooms is missing else l_0_rooms):
        l_1_strokes = resolve('strokes')
        l_1_texts = resolve('texts')
        _loop_vars = {}
        pass
        yield '<section class="plan">\n<h2>'
        yield escape(environment.getattr(l_1_room, 'name'))
        yield '</h2>\n'
        if environment.getattr(l_1_room, 'note'):
            pass
            yield '<p class="note">'
            yield escape(environment.getattr(l_1_room, 'note'))
            yield '</p>'
        yield '<svg class="floor" style="width: '
        yield escape(environment.getattr(l_1_room, 'wide'))
        yield 'mm" viewBox="0 0 '
        yield escape(environment.getattr(l_1_room, 'wide'))
        yield ' '
        yield escape(environment.getattr(l_1_room, 'tall'))
        yield '" role="img" aria-label="'
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'plan of {room}', room=environment.getattr(l_1_room, 'name'), _loop_vars=_loop_vars))
        yield '">\n'
        yield escape(context.call((undefined(name='strokes') if l_1_strokes is missing else l_1_strokes), environment.getattr(l_1_room, 'lines'), _loop_vars=_loop_vars))
        for (l_2_look, l_2_x, l_2_y, l_2_size) in environment.getattr(l_1_room, 'marks'):
            _loop_vars = {}
            pass
            if (l_2_look == 'in'):
                pass
                yield '<circle class="mark" cx="'
                yield escape(l_2_x)
                yield '" cy="'
                yield escape(l_2_y)
                yield '" r="'
                yield escape(l_2_size)
                yield '" fill="#000"/>\n'
            elif (l_2_look == 'out'):
                pass
                yield '<rect class="mark" x="'
                yield escape(t_5('%.2f', (t_4(l_2_x) - t_4(l_2_size))))
                yield '" y="'
                yield escape(t_5('%.2f', (t_4(l_2_y) - t_4(l_2_size))))
                yield '" width="'
                yield escape(t_5('%.2f', (2 * t_4(l_2_size))))
                yield '" height="'
                yield escape(t_5('%.2f', (2 * t_4(l_2_size))))
                yield '" fill="#fff" stroke="#000" stroke-width="0.4"/>\n'
            else:
                pass
                yield '<circle class="mark" cx="'
                yield escape(l_2_x)
                yield '" cy="'
                yield escape(l_2_y)
                yield '" r="'
                yield escape(l_2_size)
                yield '" fill="#fff" stroke="#000" stroke-width="0.4"/>\n'
        l_2_look = l_2_x = l_2_y = l_2_size = missing
        for l_2_arrow in environment.getattr(l_1_room, 'arrows'):
            _loop_vars = {}
            pass
            yield '<polygon class="arrow" points="'
            yield escape(l_2_arrow)
            yield '" fill="#000"/>\n'
        l_2_arrow = missing
        yield escape(context.call((undefined(name='texts') if l_1_texts is missing else l_1_texts), environment.getattr(l_1_room, 'labels'), _loop_vars=_loop_vars))
        yield '</svg>\n<p class="small">'
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'scale {scale}', scale=environment.getattr(l_1_room, 'scale'), _loop_vars=_loop_vars))
        yield '</p>\n'
        if environment.getattr(l_1_room, 'closure'):
            pass
            yield '<p class="note">'
            yield escape(environment.getattr(l_1_room, 'closure'))
            yield '</p>'
        yield '<table class="walls-list">\n<thead><tr><th scope="col">'
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'run', _loop_vars=_loop_vars))
        yield '</th><th scope="col" class="number">'
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'wall', _loop_vars=_loop_vars))
        yield '</th><th scope="col">'
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'left', _loop_vars=_loop_vars))
        yield '</th><th scope="col">'
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'right', _loop_vars=_loop_vars))
        yield '</th><th scope="col">'
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'trim', _loop_vars=_loop_vars))
        yield '</th><th scope="col">'
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'note', _loop_vars=_loop_vars))
        yield '</th></tr></thead>\n<tbody>\n'
        for l_2_row in environment.getattr(l_1_room, 'rows'):
            _loop_vars = {}
            pass
            yield '<tr><th scope="row">'
            yield escape(environment.getattr(l_2_row, 'label'))
            yield '</th><td class="number">'
            yield escape(environment.getattr(l_2_row, 'length'))
            yield '</td><td>'
            yield escape(environment.getattr(l_2_row, 'left'))
            yield '</td><td>'
            yield escape(environment.getattr(l_2_row, 'right'))
            yield '</td><td>'
            yield escape(environment.getattr(l_2_row, 'trims'))
            yield '</td><td>'
            yield escape(environment.getattr(l_2_row, 'note'))
            yield '</td></tr>\n'
        l_2_row = missing
        yield '</tbody>\n</table>\n</section>\n'
    l_1_room = l_1_strokes = l_1_texts = missing

blocks = {'kind': block_kind, 'body': block_body}
debug_info = '1=19&3=22&7=25&8=30&9=35&12=52&13=57&14=62&2=87&17=97&18=133&19=135&21=138&22=140&23=142&25=148&26=156&27=157&29=159&32=171&33=176&36=182&38=188&39=190&40=196&41=204&42=205&43=208&44=211&45=217&46=220&48=231&51=238&52=242&54=245&56=247&57=249&59=255&61=267&62=271'
