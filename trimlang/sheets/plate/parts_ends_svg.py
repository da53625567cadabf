MADE_FROM = '9ecca56c6e22c21a25fcbbc964c7dee5199d72622b80a0bec6995b7b17081f81'
from jinja2.runtime import LoopContext, Macro, Markup, Namespace, TemplateNotFound, TemplateReference, TemplateRuntimeError, Undefined, escape, identity, internalcode, markup_join, missing, str_join
name = 'parts/ends.svg'

def root(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    l_0_ends = missing
    try:
        t_1 = environment.filters['float']
    except KeyError:
        @internalcode
        def t_1(*unused):
            raise TemplateRuntimeError("No filter named 'float' found.")
    try:
        t_2 = environment.filters['length']
    except KeyError:
        @internalcode
        def t_2(*unused):
            raise TemplateRuntimeError("No filter named 'length' found.")
    pass
    def macro(l_1_drawing, l_1_about, l_1_fence):
        t_3 = []
        if l_1_drawing is missing:
            l_1_drawing = undefined("parameter 'drawing' was not provided", name='drawing')
        if l_1_about is missing:
            l_1_about = undefined("parameter 'about' was not provided", name='about')
        if l_1_fence is missing:
            l_1_fence = undefined("parameter 'fence' was not provided", name='fence')
        pass
        t_3.extend((
            '<svg class="ends" viewBox="0 0 ',
            escape(environment.getattr(l_1_drawing, 'wide')),
            ' ',
            escape(environment.getattr(l_1_drawing, 'tall')),
            '" role="img" aria-label="',
            escape(l_1_about),
            '">\n<path class="thin" d="',
            escape(environment.getattr(l_1_drawing, 'hatch')),
            '" fill="none" stroke="#000" stroke-width="0.2"/>\n<line class="thick" x1="0" y1="',
            escape(environment.getattr(l_1_drawing, 'fence')),
            '" x2="',
            escape(environment.getattr(l_1_drawing, 'wide')),
            '" y2="',
            escape(environment.getattr(l_1_drawing, 'fence')),
            '" stroke="#000" stroke-width="0.6"/>\n',
        ))
        for l_2_body in environment.getattr(l_1_drawing, 'bodies'):
            _loop_vars = {}
            pass
            t_3.extend((
                '<polygon class="wood" points="',
                escape(l_2_body),
                '" fill="#fff" stroke="#000" stroke-width="0.3"/>\n',
            ))
        l_2_body = missing
        for l_2_waste in environment.getattr(l_1_drawing, 'waste'):
            _loop_vars = {}
            pass
            t_3.extend((
                '<polygon class="cope" points="',
                escape(l_2_waste),
                '" fill="#bbb" stroke="#000" stroke-width="0.25" stroke-dasharray="0.8 0.5"/>\n',
            ))
        l_2_waste = missing
        for (l_2_x1, l_2_y1, l_2_x2, l_2_y2) in environment.getattr(l_1_drawing, 'faces'):
            _loop_vars = {}
            pass
            t_3.extend((
                '<line class="thick" x1="',
                escape(l_2_x1),
                '" y1="',
                escape(l_2_y1),
                '" x2="',
                escape(l_2_x2),
                '" y2="',
                escape(l_2_y2),
                '" stroke="#000" stroke-width="0.9"/>\n',
            ))
        l_2_x1 = l_2_y1 = l_2_x2 = l_2_y2 = missing
        for l_2_line in environment.getattr(l_1_drawing, 'breaks'):
            _loop_vars = {}
            pass
            t_3.extend((
                '<polyline class="thin" points="',
                escape(l_2_line),
                '" fill="none" stroke="#000" stroke-width="0.3"/>\n',
            ))
        l_2_line = missing
        for (l_2_x, l_2_y) in environment.getattr(l_1_drawing, 'points'):
            _loop_vars = {}
            pass
            t_3.extend((
                '<circle class="long" cx="',
                escape(l_2_x),
                '" cy="',
                escape(l_2_y),
                '" r="1.2" fill="#000"/>\n',
            ))
        l_2_x = l_2_y = missing
        if ((not environment.getattr(l_1_drawing, 'whole')) and (t_1(environment.getattr(l_1_drawing, 'wide')) > 50)):
            pass
            t_3.extend((
                '<text class="say" x="',
                escape(environment.getattr(l_1_drawing, 'middle')),
                '" y="',
                escape((t_1(environment.getattr(l_1_drawing, 'tall')) - 5)),
                '" text-anchor="middle" font-size="',
                escape(('2.8' if (t_2(l_1_fence) < 7) else '2.1')),
                '" font-family="Trim Sans, DejaVu Sans, sans-serif" fill="#000">',
                escape(l_1_fence),
                '</text>\n',
            ))
        t_3.append(
            '</svg>\n',
        )
        return concat(t_3)
    context.exported_vars.add('ends')
    context.vars['ends'] = l_0_ends = Macro(environment, macro, 'ends', ('drawing', 'about', 'fence'), False, False, False, context.eval_ctx.autoescape)

blocks = {}
debug_info = '1=24&2=35&3=41&4=43&5=50&6=55&8=59&9=64&11=68&12=73&14=83&15=88&17=92&18=97&20=103&21=107'
